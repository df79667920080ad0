/** The old wood of the fig on the terrace. */

import { type NewWood, type TreeInHand } from '../../src/editor/forms/treeInHand.ts';
import { crookedPath, tenthMm as mm } from '../../src/geometry/crookedPath.ts';
import { hashText } from '../../src/geometry/random.ts';
import { oldSeed as seed } from './oldSeed.ts';
import { between } from './wood.ts';

interface Lateral {
  readonly at: number;
  readonly swingDeg: number;
  readonly uprightDeg: number;
  readonly lengthM: number;
  readonly shoots: number;
  readonly condition?: NewWood['condition'];
}

interface Limb {
  readonly id: string;
  readonly name: string;
  readonly bearingDeg: number;
  readonly atM: number;
  readonly lengthM: number;
  readonly uprightDeg: number;
  readonly baseDiameterM: number;
  readonly laterals: readonly Lateral[];
}

export const limbs: readonly Limb[] = [
  {
    id: 'east',
    name: 'East limb',
    bearingDeg: 84,
    atM: 0.41,
    lengthM: 1.46,
    uprightDeg: 56,
    baseDiameterM: 0.083,
    laterals: [
      { at: 0.38, swingDeg: 63, uprightDeg: 62, lengthM: 0.58, shoots: 0, condition: 'dead' },
      { at: 0.56, swingDeg: -57, uprightDeg: 50, lengthM: 0.63, shoots: 5 },
      { at: 0.78, swingDeg: 46, uprightDeg: 48, lengthM: 0.52, shoots: 5 },
    ],
  },
  {
    id: 'south-west',
    name: 'South-west limb',
    bearingDeg: 217,
    atM: 0.5,
    lengthM: 1.5,
    uprightDeg: 51,
    baseDiameterM: 0.079,
    laterals: [
      { at: 0.36, swingDeg: -66, uprightDeg: 57, lengthM: 0.61, shoots: 4 },
      { at: 0.6, swingDeg: 55, uprightDeg: 66, lengthM: 0.74, shoots: 5 },
      { at: 0.82, swingDeg: -62, uprightDeg: 56, lengthM: 0.5, shoots: 4, condition: 'diseased' },
    ],
  },
  {
    id: 'north-west',
    name: 'North-west limb',
    bearingDeg: 327,
    atM: 0.61,
    lengthM: 1.43,
    uprightDeg: 45,
    baseDiameterM: 0.081,
    laterals: [
      { at: 0.4, swingDeg: 68, uprightDeg: 55, lengthM: 0.6, shoots: 5 },
      { at: 0.6, swingDeg: -64, uprightDeg: 52, lengthM: 0.57, shoots: 4 },
      { at: 0.81, swingDeg: 49, uprightDeg: 47, lengthM: 0.49, shoots: 4 },
    ],
  },
];

function addTrunk(tree: TreeInHand): void {
  tree.add({
    id: 'trunk',
    name: 'Trunk',
    kind: 'trunk',
    parentId: null,
    atM: 0,
    path: [
      [0, 0, 0],
      [0.013, 0.171, 0.006],
      [0.004, 0.352, 0.019],
      [-0.011, 0.503, 0.012],
      [-0.006, 0.614, 0.004],
    ],
    baseDiameterM: 0.152,
    tipDiameterM: 0.104,
    grownIn: 2011,
  });
}

function addLimb(tree: TreeInHand, limb: Limb): void {
  const { bearingDeg, uprightDeg, lengthM } = limb;
  const bend = { bearingDeg, uprightDeg, tipUprightDeg: uprightDeg - 26, lengthM, stretches: 5, strayDeg: 5 };
  tree.add({
    id: limb.id,
    name: limb.name,
    kind: 'scaffold',
    parentId: 'trunk',
    atM: limb.atM,
    path: crookedPath(bend, seed, hashText(limb.id)),
    baseDiameterM: limb.baseDiameterM,
    tipDiameterM: 0.017,
    grownIn: 2014,
  });
  limb.laterals.forEach((lateral, i) => addLateral(tree, limb, lateral, i + 1));
}

function addLateral(tree: TreeInHand, limb: Limb, lateral: Lateral, number: number): void {
  const id = `${limb.id}-${number}`;
  const word = hashText(id);
  const bearingDeg = limb.bearingDeg + lateral.swingDeg;
  tree.addClear(0.015, 60, (attempt) => ({
    id,
    name: `${limb.name}, lateral ${number}`,
    kind: 'lateral',
    parentId: limb.id,
    atM: mm(limb.lengthM * lateral.at),
    path: crookedPath(
      {
        bearingDeg: bearingDeg + between(-8, 8, seed, word, 3, attempt),
        uprightDeg: lateral.uprightDeg,
        tipUprightDeg: lateral.uprightDeg - 19,
        lengthM: lateral.lengthM,
        stretches: 5,
        strayDeg: 6,
      },
      seed,
      word,
      attempt,
    ),
    baseDiameterM: mm(between(0.027, 0.032, seed, word, 5)),
    tipDiameterM: 0.0125,
    grownIn: 2022 + (number % 3),
    condition: lateral.condition ?? 'live',
  }));
}

/** Trunk, limbs and laterals. */
export function addFrame(tree: TreeInHand): void {
  addTrunk(tree);
  for (const limb of limbs) addLimb(tree, limb);
}
