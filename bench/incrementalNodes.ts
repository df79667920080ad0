/** Nodes after one shoot of eighty has moved: the wave brought up to date against the wave traced anew. */
import type { Receiver, Surface } from '../src/geometry/surface.ts';
import { add, type Vec3 } from '../src/geometry/vec.ts';
import { waveDirections } from '../src/light/sky/waveDirections.ts';
import { waveRetracing } from '../src/light/trace/retraceWave.ts';
import { lastOf, traceWave } from '../src/light/trace/wave.ts';
import { processorMs } from './clock.ts';
import { nodesOf } from './nodes.ts';
import { type VaseTree, vaseTree } from './vaseTree.ts';
import { latitudeDeg } from './wave.ts';

const [leaves, rounds, shoot, by] = [1000, 9, 37, [0.03, 0.01, -0.02] as Vec3];
const waves = 4;

function moved(surface: Surface, owner: number): Surface {
  if (surface.owner !== owner) return surface;
  if (surface.shape === 'blade') return { ...surface, origin: add(surface.origin, by) };
  if (surface.shape === 'stem') {
    return { ...surface, from: add(surface.from, by), to: add(surface.to, by) };
  }
  return surface;
}

function withShootMoved({ surfaces }: VaseTree, receivers: readonly Receiver[]) {
  const isOnIt = ({ onSurface }: Receiver): boolean => surfaces[onSurface]?.owner === shoot + 1;
  return {
    surfaces: surfaces.map((surface) => moved(surface, shoot + 1)),
    receivers: receivers.map((r) => (isOnIt(r) ? { ...r, point: add(r.point, by) } : r)),
  };
}

export function measureIncrementalNodes(): string {
  const tree = vaseTree(leaves, 7);
  const { ownerCount } = tree;
  const before = { surfaces: tree.surfaces, receivers: nodesOf(tree) };
  const after = withShootMoved(tree, before.receivers);
  const directions = Array.from({ length: waves }, (_, wave) =>
    waveDirections({ latitudeDeg, seed: 3, wave }).filter(({ kind }) => kind !== 'ground'),
  );
  const traced = directions.map((its) => traceWave({ ...before, directions: its, ownerCount }));
  const [anew, partly]: [number[], number[]] = [[], []];
  for (let round = 0; round < rounds; round++) {
    anew.push(
      processorMs(() => directions.map((its) => traceWave({ ...after, directions: its, ownerCount }))),
    );
    partly.push(
      processorMs(() => {
        const bringUpToDate = waveRetracing({ ...after, ownerCount, before });
        for (const wave of traced) lastOf(bringUpToDate(wave));
      }),
    );
  }
  const [whole, part] = [Math.min(...anew) / waves, Math.min(...partly) / waves];
  return [
    '## Moving a shoot: light at the nodes',
    '',
    `${leaves} leaves and nodes, ${tree.shootCount} shoots, one of them moved; a wave of ${directions[0]?.length} directions, of ${waves} one after another: traced anew ${whole.toFixed(0)} ms, brought up to date ${part.toFixed(1)} ms, **1/${(whole / part).toFixed(1)}**. Processor time, the least of ${rounds} interleaved rounds, since others may use the machine.`,
    '',
    'Goal: a tenth.',
    '',
  ].join('\n');
}
