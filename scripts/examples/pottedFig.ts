/** A fig in a pot before a south-facing house wall: at bud break, and the same tree in full leaf. */
import type { TreeFile } from '../../src/document/treeFile.ts';
import { TreeInHand, type Wood } from '../../src/editor/forms/treeInHand.ts';
import { crookedPath, tenthMm as mm } from '../../src/geometry/crookedPath.ts';
import { hashText, randomNormal } from '../../src/geometry/random.ts';
import type { Bud } from '../../src/geometry/tree.ts';
import { courtyard } from './courtyard.ts';
import { head } from './head.ts';
import { addShoot } from './shoots.ts';
import { between, spiralBuds } from './wood.ts';

const seed = 411;

interface Limb {
  readonly id: string;
  readonly name: string;
  readonly bearingDeg: number;
  /** 1 or -1: which side the first lateral takes. */
  readonly hand: number;
  readonly atM: number;
  readonly lengthM: number;
  readonly uprightDeg: number;
  readonly baseDiameterM: number;
}

const limbs: readonly Limb[] = [
  {
    id: 'se',
    name: 'South-east limb',
    bearingDeg: 128,
    hand: 1,
    atM: 0.45,
    lengthM: 1.02,
    uprightDeg: 58,
    baseDiameterM: 0.031,
  },
  {
    id: 'nw',
    name: 'North-west limb',
    bearingDeg: 309,
    hand: -1,
    atM: 0.53,
    lengthM: 0.9,
    uprightDeg: 54,
    baseDiameterM: 0.029,
  },
  {
    id: 'sw',
    name: 'South-west limb',
    bearingDeg: 219,
    hand: 1,
    atM: 0.595,
    lengthM: 0.96,
    uprightDeg: 51,
    baseDiameterM: 0.03,
  },
  {
    id: 'ne',
    name: 'North-east limb',
    bearingDeg: 41,
    hand: -1,
    atM: 0.67,
    lengthM: 0.85,
    uprightDeg: 46,
    baseDiameterM: 0.028,
  },
];

/** Where the laterals of a limb leave it (share of its length), how far they swing from it, and how long they are. */
const lateralPlan = [
  { at: 0.33, swingDeg: -56, uprightDeg: 47, lengthM: 0.47, buds: 3 },
  { at: 0.55, swingDeg: 60, uprightDeg: 58, lengthM: 0.53, buds: 3 },
  { at: 0.76, swingDeg: -49, uprightDeg: 60, lengthM: 0.45, buds: 3 },
] as const;

function addTrunk(tree: TreeInHand): void {
  tree.add({
    id: 'trunk',
    name: 'Trunk',
    kind: 'trunk',
    parentId: null,
    atM: 0,
    path: [
      [0, 0, 0],
      [0.006, 0.168, -0.004],
      [0.001, 0.331, 0.007],
      [0.009, 0.503, 0.003],
      [0.004, 0.671, 0.008],
    ],
    baseDiameterM: 0.061,
    tipDiameterM: 0.036,
    grownIn: 2021,
  });
}

function addLimb(tree: TreeInHand, limb: Limb): void {
  const word = hashText(limb.id);
  const path = crookedPath(
    {
      bearingDeg: limb.bearingDeg,
      uprightDeg: limb.uprightDeg,
      tipUprightDeg: limb.uprightDeg - 17,
      lengthM: limb.lengthM,
      stretches: 5,
      strayDeg: 6,
    },
    seed,
    word,
  );
  const tipM = limb.lengthM - 0.002;
  tree.add({
    id: limb.id,
    name: limb.name,
    kind: 'scaffold',
    parentId: 'trunk',
    atM: limb.atM,
    path,
    baseDiameterM: limb.baseDiameterM,
    tipDiameterM: 0.014,
    grownIn: 2023,
    buds: spiralBuds(
      limb.id,
      [tipM - 0.205, tipM - 0.098, tipM],
      between(0, 360, seed, word, 9),
      137.5,
      seed,
    ),
  });
  lateralPlan.forEach((plan, i) => addLateral(tree, limb, plan, i + 1));
}

function addLateral(tree: TreeInHand, limb: Limb, plan: (typeof lateralPlan)[number], number: number): void {
  const id = `${limb.id}-${number}`;
  const word = hashText(id);
  const lengthM = mm(plan.lengthM * between(0.88, 1.12, seed, word, 1));
  tree.addClear(0.018, 60, (attempt) => ({
    id,
    name: `${limb.name}, lateral ${number}`,
    kind: 'lateral',
    parentId: limb.id,
    atM: mm(limb.lengthM * plan.at + between(-0.012, 0.012, seed, word, 2)),
    path: crookedPath(
      {
        bearingDeg: limb.bearingDeg + limb.hand * plan.swingDeg + between(-9, 9, seed, word, 3, attempt),
        uprightDeg: plan.uprightDeg + between(-5, 5, seed, word, 4, attempt),
        tipUprightDeg: plan.uprightDeg - 20,
        lengthM,
        stretches: 4,
        strayDeg: 5,
      },
      seed,
      word,
      attempt,
    ),
    baseDiameterM: mm(between(0.0145, 0.0165, seed, word, 5)),
    tipDiameterM: 0.0095,
    grownIn: 2025,
    buds: lateralBuds(id, lengthM, plan.buds + (number === 2 && limb.id !== 'ne' ? 1 : 0)),
  }));
}

/** The buds that live sit on the outer half; the nodes below them stay asleep. */
function lateralBuds(id: string, lengthM: number, count: number): Bud[] {
  const word = hashText(id);
  const tipM = lengthM - 0.001;
  const at = Array.from({ length: count }, (_, i) => {
    const fromTip = (count - 1 - i) * 0.112;
    return i === count - 1 ? tipM : tipM - fromTip + between(-0.008, 0.008, seed, word, 20 + i);
  });
  return spiralBuds(id, at, between(0, 360, seed, word, 7), 137.5, seed);
}

export function bareTree(): TreeInHand {
  const tree = new TreeInHand();
  addTrunk(tree);
  for (const limb of limbs) addLimb(tree, limb);
  return tree;
}

/** Every bud has become a shoot; the outer ones of each piece of wood are the stronger. */
function leafyTree(): TreeInHand {
  const bare = bareTree();
  const tree = new TreeInHand();
  for (const wood of bare.axes) tree.add({ ...wood, buds: [] });
  for (const wood of bare.axes) {
    wood.buds.forEach((bud, i) => addShoot(tree, shootFrom(wood, bud, i), seed));
  }
  return tree;
}

function shootFrom(wood: Wood, bud: Bud, i: number): Parameters<typeof addShoot>[1] {
  const word = hashText(bud.id);
  const last = wood.buds.length - 1;
  const lengthM = mm((0.17 + (0.25 * i) / last) * Math.exp(0.16 * randomNormal(seed, word, 1)));
  return {
    id: `${bud.id}-shoot`,
    name: `${wood.name}, shoot ${i + 1}`,
    woodId: wood.id,
    atM: bud.atM,
    aroundDeg: bud.aroundDeg,
    lengthM,
    grownIn: 2026,
    lean: i === last ? 0.35 : 1.2,
    internodeM: 0.061 * between(0.9, 1.1, seed, word, 10),
    midribM: 0.142 + 0.08 * lengthM + between(-0.008, 0.008, seed, word, 11),
  };
}

export function pottedFigAtBudBreak(): TreeFile {
  return {
    ...head(
      'potted-fig-bud-break',
      'Potted fig by the house wall, at bud break',
      'An invented tree. Every bud that lives is entered; the question is which of them to rub off.',
    ),
    ...courtyard,
    season: { budBreakOn: '2026-04-14', sketchedOn: '2026-04-19' },
    settings: {},
    axes: bareTree().axes,
  };
}

export function pottedFigInLeaf(): TreeFile {
  return {
    ...head(
      'potted-fig-in-leaf',
      'Potted fig by the house wall, in leaf',
      'The same invented tree in July, after every bud was left to grow.',
    ),
    ...courtyard,
    season: { budBreakOn: '2026-04-14', sketchedOn: '2026-07-12' },
    settings: {},
    axes: leafyTree().axes,
  };
}
