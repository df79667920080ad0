import { describe, expect, it } from 'vitest';
import { closestApproach } from '../../src/geometry/distance.ts';
import { pathLengthM, pointAt } from '../../src/geometry/path.ts';
import { random01 } from '../../src/geometry/random.ts';
import { type PlacedAxis, radiusAtM } from '../../src/geometry/tree.ts';
import { add, distance, scale, type Vec3 } from '../../src/geometry/vec.ts';
import { nearness } from '../../src/plan/rules/nearness.ts';

/** A branch of its own, from its first point on. */
function branch(path: readonly Vec3[], diameterM: number, tipDiameterM = diameterM): PlacedAxis {
  const axis = { id: 'a', baseDiameterM: diameterM, tipDiameterM };
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
  return { seed, distanceM, near: nearness(first, second, limitM, 0.011, 0.15) };
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

/** The least distance of the barks of two straight branches, by trying every pair of points two millimetres apart. */
function barksApartM(first: PlacedAxis, second: PlacedAxis): number {
  let leastM = Number.POSITIVE_INFINITY;
  for (let a = 0; a <= first.lengthM; a += 0.002) {
    for (let b = 0; b <= second.lengthM; b += 0.002) {
      const apartM = distance(pointAt(first.path, a), pointAt(second.path, b));
      leastM = Math.min(leastM, apartM - radiusAtM(first, a) - radiusAtM(second, b));
    }
  }
  return leastM;
}

describe('the gap between two barks', () => {
  it.each(Array.from({ length: 12 }, (_, i) => 511 + i))(
    'is that of tapered wood, not of centre lines (seed %i)',
    (seed) => {
      const stray = (k: number): number => random01(seed, k) - 0.5;
      const first = branch(
        [
          [-0.31, 1, 0.02],
          [0.37, 1.03 + 0.06 * stray(1), 0.2 * stray(2)],
        ],
        0.031,
        0.006,
      );
      const second = branch(
        [
          [0.2 * stray(3), 1.036, -0.29],
          [0.2 * stray(4), 1.041, 0.33],
        ],
        0.024,
        0.005,
      );
      const near = nearness(first, second, 0.07, 0.05, 0.15);
      const barkGapM = near?.barkGapM ?? Number.NaN;
      expect(Math.abs(barkGapM - Math.max(0, barksApartM(first, second)))).toBeLessThan(2e-4);
      expect((near?.limitM as number) - (near?.gapM as number)).toBeCloseTo(
        (near?.barkLimitM as number) - barkGapM,
        barkGapM > 0 ? 9 : 1,
      );
    },
  );

  it('is least where two thick bases lie side by side, though their thin tips are nearer by the centre lines', () => {
    const bent = branch(
      [
        [0, 1, -0.35],
        [0, 1, 0],
        [0.6, 1, 0],
      ],
      0.062,
      0.004,
    );
    const beside = branch(
      [
        [0, 1, 0.052],
        [0.6, 1, 0.042],
      ],
      0.041,
      0.004,
    );
    const near = nearness(bent, beside, 0.06, 0.02, 0.15);
    expect(near?.alongSecondM).toBeLessThan(0.02);
    const bentRadiusM = 0.031 - (0.029 * 0.35) / 0.95;
    expect(Math.abs((near?.barkGapM as number) - (0.052 - bentRadiusM - 0.0205))).toBeLessThan(1e-3);
  });

  it('is nothing where the sketch runs one branch through the other', () => {
    const up = branch(
      [
        [0, 0.8, 0],
        [0, 1.3, 0],
      ],
      0.019,
    );
    const level = branch(
      [
        [-0.4, 1.1, 0.003],
        [0.4, 1.1, 0.003],
      ],
      0.013,
    );
    expect(nearness(up, level, 0.03, 0.02, 0.15)?.barkGapM).toBe(0);
  });
});

it('finds the barks of two straight branches 1.2 cm apart over 9 cm, where geometry says so', () => {
  // Even branches of 1.8 cm, lines 3 cm apart at an angle of 31 degrees: nearer than 1.8 + 2 cm over 2 sqrt(3.8^2 - 3^2) / sin 31 = 9.06 cm.
  const angle = (31 * Math.PI) / 180;
  const along: Vec3 = [Math.cos(angle), 0, Math.sin(angle)];
  const level = branch(
    [
      [-0.4, 1, 0],
      [0.4, 1, 0],
    ],
    0.018,
  );
  const above = branch(
    [add([0, 1.03, 0], scale(along, -0.37)), add([0, 1.03, 0], scale(along, 0.43))],
    0.018,
  );
  const near = nearness(level, above, 0.03, 0.02, 0.15);
  expect(near?.barkGapM).toBeCloseTo(0.012, 6);
  const overM = (2 * Math.sqrt(0.038 ** 2 - 0.03 ** 2)) / Math.sin(angle);
  // Found to pieces of a centimetre, one at either end.
  expect(Math.abs((near?.overM ?? 0) - overM)).toBeLessThan(0.02);
});
