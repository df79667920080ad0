/** What a light job answers on its way, and when it stops. */
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import type { LightAnswer, LightOptions } from '../../src/engine/engine.ts';
import { lightJob } from '../../src/engine/lightJob.ts';
import { exampleText } from '../cli/stand.ts';

function sample(name: string): TreeFile {
  const read = parseTreeFile(exampleText(name));
  if (!read.ok) throw new Error(`sample: ${name} is refused, got ${read.reason}`);
  return read.file;
}

function carried(file: TreeFile, options: LightOptions) {
  const partials: LightAnswer[] = [];
  const done: number[] = [];
  const job = lightJob(file, options, null);
  for (let step = job.next(); ; step = job.next()) {
    if (step.done) return { partials, done, ...step.value };
    done.push(step.value.done);
    if (step.value.partial !== undefined) partials.push(step.value.partial);
  }
}

const medianOf = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
const errorOf = ({ report }: LightAnswer): number =>
  medianOf(report.shoots.map(({ standardError }) => standardError));

describe('a first picture', { timeout: 60_000 }, () => {
  const fig = sample('potted-fig-in-leaf');
  const { partials, done, answer, traced } = carried(fig, { waves: 4, seed: 17 });
  const coarse = partials[0] as LightAnswer;

  it('comes from a tenth of the rays of the first two waves, or fewer', () => {
    expect(coarse.report.rays).toBeLessThan((partials[1]?.report.rays as number) / 10);
  });

  it('has every shoot and node, and says how far off it may be (seed 17)', () => {
    expect(coarse.nodes).toHaveLength(answer.nodes.length);
    const off = coarse.report.shoots.map(({ id, lightFraction, standardError }) => {
      const fine = answer.report.shoots.find((shoot) => shoot.id === id);
      return { off: Math.abs(lightFraction - (fine?.lightFraction as number)), standardError };
    });
    expect(off).toHaveLength(answer.report.shoots.length);
    // Two halves tell their error no better than within a factor of two or so.
    expect(medianOf(off.map((shoot) => shoot.off))).toBeLessThan(2 * errorOf(coarse));
    expect(errorOf(coarse)).toBeGreaterThan(errorOf(answer));
    expect(medianOf(off.map((shoot) => shoot.off))).toBeLessThan(0.05);
  });

  it('is on the way from 0 to 1, which never goes back', () => {
    expect(done[0]).toBe(0);
    for (const [i, share] of done.entries()) expect(share).toBeGreaterThanOrEqual(done[i - 1] ?? 0);
    expect(done.at(-1)).toBeLessThanOrEqual(1);
  });

  it('lets a cancel in after every 16 directions, after every month, and between the figures of every wave', () => {
    const { ledger, leafLedger } = traced;
    const sixteens = [...ledger.waves, ...leafLedger.waves]
      .map(({ directions }) => Math.floor((directions.length - 1) / 16))
      .reduce((sum, steps) => sum + steps, 0);
    const months = answer.report.shoots[0]?.byMonth.length as number;
    const figuresOfWaves = 2 * ledger.waves.length;
    expect(done.length).toBeGreaterThan(sixteens + months + figuresOfWaves);
  });

  it('is left out for a tree so small that two waves are as quick', () => {
    const small = sample('young-whip');
    const some = small.axes.filter(({ foliage }) => foliage === null || foliage.count === 0);
    const few = small.axes.filter((axis) => !some.includes(axis)).slice(0, 3);
    const tree = { ...small, axes: [...some, ...few].map((axis) => ({ ...axis, buds: [] })) };
    const { partials: given } = carried(tree, { waves: 4, seed: 17 });
    expect(given).toHaveLength(1);
  });
});

describe('an error that is asked for', { timeout: 60_000 }, () => {
  const whip = sample('young-whip');

  it('is reached with the fewest waves that do, and not with one less (seed 19)', () => {
    const { answer, traced } = carried(whip, { error: 0.0006, seed: 19 });
    const waves = traced.ledger.waves.length;
    expect(waves).toBeGreaterThan(4);
    expect(waves).toBeLessThan(64);
    expect(errorOf(answer)).toBeLessThanOrEqual(0.0006);
    expect(carried(whip, { waves, seed: 19 }).answer).toEqual(answer);
    expect(errorOf(carried(whip, { waves: waves - 1, seed: 19 }).answer)).toBeGreaterThan(0.0006);
  });

  it('is given up after the waves allowed', () => {
    const { traced } = carried(whip, { error: 1e-6, waves: 5, seed: 19 });
    expect(traced.ledger.waves).toHaveLength(5);
  });
});
