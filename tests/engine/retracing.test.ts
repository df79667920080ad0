/** A tree whose branch was moved: only that branch is traced again, and nobody can tell. */
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { finishJob } from '../../src/engine/job.ts';
import { lightJob } from '../../src/engine/lightJob.ts';
import { retracing } from '../../src/engine/retracing.ts';
import type { TracedTree } from '../../src/engine/tracedTree.ts';
import { random01 } from '../../src/geometry/random.ts';
import { rotate, type Vec3 } from '../../src/geometry/vec.ts';
import { exampleText } from '../cli/stand.ts';

const read = parseTreeFile(exampleText('potted-fig-in-leaf'));
if (!read.ok) throw new Error(`retracing: the sample is refused, got ${read.reason}`);
const fig: TreeFile = { ...read.file, site: { ...read.file.site, surroundings: [] } };
const options = { waves: 2, seed: 23 };

/** Arrays of waves that are not the same byte for byte. */
function differing(a: TracedTree['leafLedger'], b: typeof a): string[] {
  expect(a.waves).toHaveLength(b.waves.length);
  return a.waves.flatMap((wave, w) =>
    Object.entries(wave).flatMap(([name, array]) => {
      const other = (b.waves[w] as unknown as Record<string, unknown>)[name];
      if (!ArrayBuffer.isView(array) || !ArrayBuffer.isView(other)) return [];
      const bytes = (view: ArrayBufferView) => Buffer.from(view.buffer, view.byteOffset, view.byteLength);
      return bytes(array).equals(bytes(other)) ? [] : [`wave ${w}: ${name}`];
    }),
  );
}

/** The tree with one of its axes swung about its base, and all that grows on it. */
function swung(file: TreeFile, id: string, byDeg: number): TreeFile {
  const turn = (point: Vec3): Vec3 => rotate(point, [0, 1, 0], (byDeg * Math.PI) / 180);
  const axes = file.axes.map((axis) =>
    axis.id === id
      ? { ...axis, path: axis.path.map((point) => [...turn(point)] as [number, number, number]) }
      : axis,
  );
  return { ...file, axes };
}

const traced = (file: TreeFile, kept: TracedTree | null = null) => finishJob(lightJob(file, options, kept));
const shoots = fig.axes.filter(({ foliage }) => (foliage?.count ?? 0) > 0);
const first = traced(fig);

describe('a tree with a branch moved', { timeout: 60_000 }, () => {
  const seeds = [401, 402, 403];
  it.each(seeds)('has the light and the waves of a trace from the start (seed %i)', (seed) => {
    const { id } = shoots[Math.floor(random01(seed, 0) * shoots.length)] as { id: string };
    const moved = swung(fig, id, 20 + 60 * random01(seed, 1));
    const again = traced(moved, first.traced);
    const fresh = traced(moved);
    expect(again.answer).toEqual(fresh.answer);
    // The lists of the node waves may have other numbers, their shares are the same.
    expect(differing(again.traced.leafLedger, fresh.traced.leafLedger)).toEqual([]);
    expect(again.answer).not.toEqual(first.answer);
    expect(retracing(first.traced, fresh.traced)).not.toBeNull();
  });

  it('can be moved once more, and back', () => {
    const { id } = shoots[7] as { id: string };
    const there = traced(swung(fig, id, 33), first.traced);
    const back = traced(swung(swung(fig, id, 33), id, -33), there.traced);
    const shares = (of: typeof first) => of.answer.report.shoots.map(({ lightFraction }) => lightFraction);
    shares(back).forEach((share, s) => {
      expect(share).toBeCloseTo(shares(first)[s] as number, 4);
    });
  });
});

describe('where a trace from the start is needed', () => {
  const source = (file: TreeFile, with_: typeof options = options) =>
    retracing(first.traced, finishJob(lightJob(file, with_, null)).traced);

  it('nothing is taken from other rays, another number of waves or a tree with fewer leaves', () => {
    const { id } = shoots[3] as { id: string };
    expect(source(swung(fig, id, 40))).not.toBeNull();
    expect(source(fig, { ...options, seed: 24 })).toBeNull();
    expect(source(fig, { ...options, waves: 3 })).toBeNull();
    expect(source({ ...fig, site: { ...fig.site, latitudeDeg: 43 } })).toBeNull();
    expect(source({ ...fig, axes: fig.axes.filter((axis) => axis.id !== id) })).toBeNull();
  });

  it('nothing is taken from a tree that stands otherwise altogether', () => {
    const turned = { ...fig, standing: { ...fig.standing, turnedDeg: 90 } };
    expect(source(turned)).toBeNull();
    expect(traced(turned, first.traced).answer).toEqual(traced(turned).answer);
  });
});
