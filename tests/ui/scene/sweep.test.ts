import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import type { Project, Rod } from '../../../src/ui/scene/pick.ts';
import { branchWood, sweepOver } from '../../../src/ui/scene/sweep.ts';
import { smallCanopy } from './smallCanopy.ts';

/** 200 pixels a metre, x to the right, y up, the eye far out on z. */
const flat: Project = ([x, y, z]: Vec3) => [200 * x, 300 - 200 * y, 10 - z];
const pxPerM = (): number => 200;

/** Upright wood at x, as thick as a finger. */
const rod = (id: string, x: number, z = 0): Rod => ({
  id,
  shape: 'wood',
  from: [x, 0.1, z],
  to: [x, 1.1, z],
  radiusM: 0.005,
});
const rods = [rod('left', 0.4), rod('middle', 0.7), rod('right', 1.1)];
const met = (
  all: readonly Rod[],
  from: readonly [number, number],
  to: readonly [number, number],
  reachPx = 8,
) => [...sweepOver(all, flat, pxPerM, reachPx).from(from, to)].sort();

describe('a stroke over branches', () => {
  it('meets those that it crosses, however fast the hand was', () => {
    expect(met(rods, [60, 200], [160, 190])).toEqual(['left', 'middle']);
    expect(met(rods, [60, 200], [260, 190])).toEqual(['left', 'middle', 'right']);
  });

  it('meets nothing beside them, and one that is near enough', () => {
    expect(met(rods, [100, 200], [120, 120])).toEqual([]);
    expect(met(rods, [92, 200], [92, 210], 14)).toEqual(['left']);
    expect(met(rods, [92, 200], [92, 210], 8)).toEqual([]);
  });

  it('meets of two behind each other the one before, where it is on both', () => {
    const thick = (id: string, z: number): Rod => ({ ...rod(id, 0.7, z), radiusM: 0.02 });
    expect(met([thick('behind', -0.5), thick('before', 0.5)], [137, 200], [143, 195])).toEqual(['before']);
  });

  it('goes over the wood of branches alone: a bud that has not grown yet cannot be marked so', () => {
    const ids = new Set(branchWood(smallCanopy).map(({ id }) => id));
    const axes = smallCanopy.owners.flatMap((owner) => (owner?.kind === 'axis' ? [owner.id] : []));
    expect(ids.size).toBeGreaterThan(0);
    expect([...ids].every((id) => axes.includes(id))).toBe(true);
  });
});
