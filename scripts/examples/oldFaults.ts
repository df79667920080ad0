/** What went wrong on the old fig: limbs that rub, a narrow fork, dead wood, suckers, a water sprout. */

import { type TreeInHand } from '../../src/editor/forms/treeInHand.ts';
import { crookedPath, tenthMm as mm } from '../../src/geometry/crookedPath.ts';
import { pointAt, tangentAt } from '../../src/geometry/path.ts';
import { hashText, randomNormal } from '../../src/geometry/random.ts';
import {
  add,
  cross,
  distance,
  length,
  lerp,
  normalize,
  scale,
  sub,
  type Vec3,
} from '../../src/geometry/vec.ts';
import { bearingDeg as bearingOf, fromUprightDeg } from '../../src/geometry/world.ts';
import { baseDiameterM } from '../../src/growth/shootForm.ts';
import { oldSeed as seed } from './oldSeed.ts';
import { published } from './shoots.ts';

/** A lateral that runs across another and rubs on it, its bark a millimetre off. */
function addRubbing(tree: TreeInHand): void {
  const across = tree.standing('south-west-2');
  const limb = tree.standing('north-west');
  const atM = 0.31;
  const base = pointAt(limb.path, atM);
  const touch = pointAt(across.path, 0.47);
  // Off both centre lines by the two radii there, and upwards.
  const apart = normalize(cross(sub(touch, base), tangentAt(across.path, 0.47)));
  const lift = apart[1] > 0 ? 0.018 : -0.018;
  const reach = add(sub(touch, base), scale(apart, lift));
  const bow = (t: number, liftM: number): Vec3 => add(lerp([0, 0, 0], reach, t), [0, liftM, 0]);
  const beyond = add(reach, scale(reach, 0.24 / length(reach)));
  tree.add({
    id: 'north-west-rubbing',
    name: 'North-west limb, long lateral',
    kind: 'lateral',
    parentId: 'north-west',
    atM,
    path: [[0, 0, 0], bow(0.35, 0.012), bow(0.7, 0.009), reach, add(beyond, [0.01, 0.055, 0.004])].map(
      ([x, y, z]): Vec3 => [mm(x), mm(y), mm(z)],
    ),
    baseDiameterM: 0.03,
    tipDiameterM: 0.0118,
    grownIn: 2023,
  });
}

/** A fork so narrow that bark is shut in between: 22 degrees from the limb it leaves. */
function addNarrowFork(tree: TreeInHand): void {
  const limb = tree.standing('north-west');
  const atM = 0.71;
  const [from, to] = [pointAt(limb.path, atM), pointAt(limb.path, atM + 0.1)];
  const along = scale(sub(to, from), 1 / distance(from, to));
  const bearingDeg = bearingOf(along);
  const uprightDeg = fromUprightDeg(along);
  tree.add({
    id: 'north-west-fork',
    name: 'North-west limb, narrow fork',
    kind: 'lateral',
    parentId: 'north-west',
    atM,
    path: crookedPath(
      {
        bearingDeg: bearingDeg - 17,
        uprightDeg: uprightDeg + 19,
        tipUprightDeg: uprightDeg + 9,
        lengthM: 0.57,
        stretches: 4,
        strayDeg: 0,
      },
      seed,
      17,
    ),
    baseDiameterM: 0.034,
    tipDiameterM: 0.0125,
    grownIn: 2023,
  });
}

function addDeadTwig(tree: TreeInHand): void {
  const bend = {
    bearingDeg: 196,
    uprightDeg: 71,
    tipUprightDeg: 82,
    lengthM: 0.23,
    stretches: 3,
    strayDeg: 7,
  };
  tree.add({
    id: 'east-1-twig',
    name: 'East limb, lateral 1, twig',
    kind: 'lateral',
    parentId: 'east-1',
    atM: 0.34,
    path: crookedPath(bend, seed, 23),
    baseDiameterM: 0.011,
    tipDiameterM: 0.005,
    grownIn: 2024,
    condition: 'dead',
  });
}

interface Vigorous {
  readonly id: string;
  readonly name: string;
  readonly kind: 'shoot' | 'sucker';
  readonly parentId: string;
  readonly atM: number;
  readonly bearingDeg: number;
  readonly uprightDeg: number;
  readonly lengthM: number;
  readonly leaves: number;
  /** First point, when it does not lie in the middle of its parent. */
  readonly from?: Vec3;
}

const vigorous: readonly Vigorous[] = [
  {
    id: 'sucker-1',
    name: 'Sucker low on the trunk, south side',
    kind: 'sucker',
    parentId: 'trunk',
    atM: 0.074,
    bearingDeg: 171,
    uprightDeg: 38,
    lengthM: 0.71,
    leaves: 9,
  },
  {
    id: 'sucker-2',
    name: 'Sucker low on the trunk, north side',
    kind: 'sucker',
    parentId: 'trunk',
    atM: 0.163,
    bearingDeg: 17,
    uprightDeg: 34,
    lengthM: 0.58,
    leaves: 8,
  },
  {
    id: 'sucker-3',
    name: 'Sucker from the soil, west side',
    kind: 'sucker',
    parentId: 'trunk',
    atM: 0,
    bearingDeg: 262,
    uprightDeg: 19,
    lengthM: 0.88,
    leaves: 11,
    from: [-0.163, -0.04, 0.021],
  },
  {
    id: 'water-sprout',
    name: 'Water sprout on the South-west limb',
    kind: 'shoot',
    parentId: 'south-west',
    atM: 0.63,
    bearingDeg: 43,
    uprightDeg: 15,
    lengthM: 1.07,
    leaves: 12,
  },
];

function addVigorous(tree: TreeInHand, plan: Vigorous): void {
  const { id, name, kind, parentId, atM, bearingDeg, uprightDeg, lengthM } = plan;
  const start = plan.from ?? [0, 0, 0];
  tree.addClear(0.004, 60, (attempt) => {
    const swing = attempt === 0 ? 0 : 10 * randomNormal(seed, hashText(id), attempt, 31);
    const bend = {
      bearingDeg: bearingDeg + swing,
      uprightDeg,
      tipUprightDeg: uprightDeg / 3,
      lengthM,
      stretches: 5,
      strayDeg: 2.5,
    };
    return {
      id,
      name,
      kind,
      parentId,
      atM,
      path: crookedPath(bend, seed, hashText(id), attempt).map((point): Vec3 => {
        const [x, y, z] = add(start, point);
        return [mm(x), mm(y), mm(z)];
      }),
      baseDiameterM: mm(baseDiameterM(lengthM, published)),
      tipDiameterM: 0.006,
      grownIn: 2026,
      foliage: { count: plan.leaves, midribM: 0.216, source: 'measured' },
    };
  });
}

export function addFaults(tree: TreeInHand): void {
  addRubbing(tree);
  addNarrowFork(tree);
  addDeadTwig(tree);
  for (const plan of vigorous) addVigorous(tree, plan);
}
