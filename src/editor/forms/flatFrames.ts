/** Forms trained flat: fan, cordon, knee-high cordon. */
import { crookedPath, tenthMm } from '../../geometry/crookedPath.ts';
import type { Path } from '../../geometry/path.ts';
import { hashText, random01 } from '../../geometry/random.ts';
import { add, scale, type Vec3 } from '../../geometry/vec.ts';
import { direction, rad, wrapDeg } from '../../geometry/world.ts';
import type { FormFigures } from './formFigures.ts';
import { limbNames, type PlannedShoot, type PlannedWood, reaching, sharedOut } from './plannedWood.ts';
import { trunkOf } from './roundFrames.ts';

/** Angles and shares of these forms without a published figure are our choice, after the usual look. */
const fanArmDeg = { base: 62, tip: 74 };
const armGapM = 0.04;

/** One way and the other. */
const bothWays = ({ towardsDeg, limbs }: FormFigures): number[] =>
  [towardsDeg, wrapDeg(towardsDeg + 180)].slice(0, limbs);

/** Two arms with ribs that spread like fingers; the outline is about a half round. */
export function fanFrame(figures: FormFigures, seed: number): PlannedWood {
  const { trunkM, laterals, shoots, spreadM } = figures;
  const bearings = bothWays(figures);
  const names = limbNames(bearings, 'arm');
  const perArm = sharedOut(shoots, 2);
  const topM = trunkM + armGapM;
  const arms = bearings.map((bearingDeg, i): PlannedWood => {
    const id = `limb-${i + 1}`;
    const counts = sharedOut(perArm[i] as number, laterals + 1);
    const bend = {
      bearingDeg,
      uprightDeg: fanArmDeg.base,
      tipUprightDeg: fanArmDeg.tip,
      stretches: 6,
      strayDeg: 1,
    };
    const name = names[i] as string;
    return {
      id,
      name,
      kind: 'scaffold',
      share: (trunkM + i * armGapM) / topM,
      ageYears: 3,
      course: () => reaching(bend, spreadM / 2, seed, hashText(id)),
      carries: Array.from({ length: laterals }, (_, j) =>
        rib(`${id}-${j + 1}`, `${name}, rib ${j + 1}`, {
          rank: laterals === 1 ? 0.5 : j / (laterals - 1),
          bearingDeg,
          reachM: spreadM / 2,
          shoots: counts[j] as number,
          seed,
        }),
      ),
      shoots: sideShoots(counts[laterals] as number, 0.75),
    };
  });
  return trunkOf(topM, arms, seed);
}

interface Rib {
  /** 0 the inner, 1 the outer. */
  readonly rank: number;
  readonly bearingDeg: number;
  readonly reachM: number;
  readonly shoots: number;
  readonly seed: number;
}

function rib(id: string, name: string, { rank, bearingDeg, reachM, shoots, seed }: Rib): PlannedWood {
  const share = 0.16 + 0.5 * rank;
  const uprightDeg = 12 + 18 * rank;
  // From its place on the arm, `outM` from the fork, out to the half round.
  const outM = share * reachM;
  const towardsM = outM * Math.cos(rad((fanArmDeg.base + fanArmDeg.tip) / 2 - uprightDeg));
  const lengthM = Math.sqrt(towardsM ** 2 + reachM ** 2 - outM ** 2) - towardsM;
  const bend = {
    bearingDeg,
    uprightDeg,
    tipUprightDeg: uprightDeg + 8 * rank,
    lengthM,
    stretches: 5,
    strayDeg: 1,
  };
  return {
    id,
    name,
    kind: 'lateral',
    share,
    ageYears: 2,
    course: () => crookedPath(bend, seed, hashText(id)),
    carries: [],
    shoots: sideShoots(shoots, 0.3),
  };
}

/** By turns to either side in the plane of the fan, a little to its front; the last goes on from the tip. */
const sideShoots = (count: number, from: number): PlannedShoot[] =>
  Array.from({ length: count }, (_, i) => {
    const rank = count === 1 ? 1 : i / (count - 1);
    const isLast = i === count - 1;
    return {
      share: from + (1 - from) * rank,
      aroundDeg: i % 2 === 0 ? 20 : 160,
      lean: isLast ? 0.1 : 1,
      strength: isLast ? 1.3 : 1,
    };
  });

/** Level arms with upright shoots by turns to either side. */
export function cordonFrame(figures: FormFigures, seed: number): PlannedWood {
  const { trunkM, limbs, shoots, spreadM } = figures;
  const bearings = bothWays(figures);
  const names = limbNames(bearings, 'arm');
  const perArm = sharedOut(shoots, limbs);
  const arms = bearings.map((bearingDeg, i): PlannedWood => {
    const id = `limb-${i + 1}`;
    return {
      id,
      name: names[i] as string,
      kind: 'scaffold',
      share: trunkM / (trunkM + (limbs - 1) * armGapM) + i * (armGapM / (trunkM + armGapM)),
      ageYears: 4,
      course: () => levelArm(bearingDeg, spreadM / limbs, i * armGapM, seed, hashText(id)),
      carries: [],
      shoots: tiedShoots(perArm[i] as number, bearingDeg, seed, hashText(id)),
    };
  });
  return trunkOf(trunkM + (limbs - 1) * armGapM, arms, seed);
}

/** Out of the trunk a little upwards or downwards and then level; `fallM` below its base at the end. */
function levelArm(bearingDeg: number, reachM: number, fallM: number, seed: number, word: number): Path {
  const along = direction(bearingDeg, 0);
  const count = 8;
  const points = Array.from({ length: count + 1 }, (_, i): Vec3 => {
    const t = i / count;
    const stray = i === 0 ? 0 : 0.016 * (random01(seed, word, 1, i) - 0.5);
    const settled = Math.min(1, t / 0.25);
    return add(scale(along, t * reachM), [0, stray - fallM * settled * settled, 0]);
  });
  return points.map(([x, y, z]): Vec3 => [tenthMm(x), tenthMm(y), tenthMm(z)]);
}

/** Upright shoots along an arm, tied up by turns to the front and to the back. */
function tiedShoots(count: number, armDeg: number, seed: number, word: number): PlannedShoot[] {
  return Array.from({ length: count }, (_, i) => {
    const hand = i % 2 === 0 ? 1 : -1;
    return {
      share: (i + 0.8) / (count - 0.2),
      aroundDeg: hand > 0 ? 25 : 335,
      lean: 1,
      strength: 0.9 + 0.2 * random01(seed, word, 2, i),
      tied: { bearingDeg: armDeg + 90 * hand, uprightDeg: 20, tipUprightDeg: 3 },
    };
  });
}
