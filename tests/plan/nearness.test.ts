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

const limitM = 0.05;

function pair(seed: number) {
  const first = branch(crooked(seed, [-0.43, 1, 0.02], [0.1, 0.004, 0]), 0.013);
  const height = 1 + 0.2 * (random01(seed, 99) - 0.5);
  const second = branch(crooked(seed + 1000, [0.03, height, -0.47], [0, 0, 0.1]), 0.021);
  const { distanceM } = closestApproach(first.path, second.path);
  return { seed, distanceM, near: nearness(first, second, limitM, 0.011) };
}

describe('how near two branches come (seeds 311 to 350)', () => {
  const pairs = Array.from({ length: 40 }, (_, i) => pair(311 + i));
  const [meeting, apart] = [true, false].map((meets) =>
    pairs.filter(({ distanceM }) => distanceM < limitM === meets),
  ) as [typeof pairs, typeof pairs];

  it('is nothing where their lines stay farther apart than the limit', () => {
    expect(apart.length).toBeGreaterThan(8);
    for (const { seed, near } of apart) expect(near, `seed ${seed}`).toBeNull();
  });

  it('is the least distance of their lines elsewhere', () => {
    expect(meeting.length).toBeGreaterThan(8);
    for (const { seed, near, distanceM } of meeting) {
      expect(near?.limitM, `seed ${seed}`).toBe(limitM);
      // Pieces of a centimetre cut the corners of the paths.
      expect(Math.abs((near?.gapM as number) - distanceM), `seed ${seed}`).toBeLessThan(5e-4);
      expect(near?.overM, `seed ${seed}`).toBeGreaterThan(0);
    }
  });
});
