import { describe, expect, it } from 'vitest';
import { closestApproach } from '../../src/geometry/distance.ts';
import { pathLengthM } from '../../src/geometry/path.ts';
import { random01 } from '../../src/geometry/random.ts';
import type { PlacedAxis } from '../../src/geometry/tree.ts';
import { add, scale, type Vec3 } from '../../src/geometry/vec.ts';
import { nearness } from '../../src/plan/rules/nearness.ts';

/** A crooked branch of its own, from its first point on. */
function branch(path: readonly Vec3[], diameterM: number): PlacedAxis {
  const axis = { id: 'a', baseDiameterM: diameterM, tipDiameterM: diameterM };
  return { axis, path, lengthM: pathLengthM(path), parent: null } as unknown as PlacedAxis;
}

function crooked(seed: number, from: Vec3, step: Vec3): Vec3[] {
  const path = [from];
  for (let i = 0; i < 9; i++) {
    const stray: Vec3 = [0, 1, 2].map((k) => random01(seed, i, k) - 0.5) as unknown as Vec3;
    path.push(add(path[i] as Vec3, add(step, scale(stray, 0.06))));
  }
  return path;
}

describe('how near two branches come', () => {
  const seeds = Array.from({ length: 40 }, (_, i) => 311 + i);
  let met = 0;
  it.each(seeds)(
    'is the least distance of their lines, or nothing where that is above the limit (seed %i)',
    (seed) => {
      const first = branch(crooked(seed, [-0.43, 1, 0.02], [0.1, 0.004, 0]), 0.013);
      const height = 1 + 0.2 * (random01(seed, 99) - 0.5);
      const second = branch(crooked(seed + 1000, [0.03, height, -0.47], [0, 0, 0.1]), 0.021);
      const { distanceM } = closestApproach(first.path, second.path);
      const near = nearness(first, second, 0.05, 0.011);
      if (distanceM >= 0.05) expect(near).toBeNull();
      else {
        met++;
        expect(near?.limitM).toBe(0.05);
        // Pieces of a centimetre cut the corners of the paths.
        expect(Math.abs((near?.gapM as number) - distanceM)).toBeLessThan(5e-4);
        expect(near?.overM).toBeGreaterThan(0);
      }
    },
  );

  it('was tried with branches that meet and with such that do not', () => {
    expect(met).toBeGreaterThan(8);
    expect(met).toBeLessThan(32);
  });
});
