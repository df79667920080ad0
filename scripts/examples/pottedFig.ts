/** A fig in a pot before a south-facing house wall: at bud break, and the same tree in full leaf. */

import { currentVersion, formatName, type TreeFile } from '../../src/document/treeFile.ts';
import { outwardAt, tangentAt } from '../../src/geometry/path.ts';
import { hashText, randomNormal } from '../../src/geometry/random.ts';
import type { Bud } from '../../src/geometry/tree.ts';
import { add, normalize, scale, type Vec3 } from '../../src/geometry/vec.ts';
import { bearingDeg, fromUprightDeg } from '../../src/geometry/world.ts';
import { between, crookedPath, mm, spiralBuds, TreeInHand } from './wood.ts';

const seed = 411;

interface Limb {
  readonly id: string;
  readonly name: string;
  readonly bearingDeg: number;
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
    atM: 0.45,
    lengthM: 0.72,
    uprightDeg: 58,
    baseDiameterM: 0.031,
  },
  {
    id: 'nw',
    name: 'North-west limb',
    bearingDeg: 309,
    atM: 0.53,
    lengthM: 0.63,
    uprightDeg: 54,
    baseDiameterM: 0.029,
  },
  {
    id: 'sw',
    name: 'South-west limb',
    bearingDeg: 219,
    atM: 0.595,
    lengthM: 0.66,
    uprightDeg: 51,
    baseDiameterM: 0.03,
  },
  {
    id: 'ne',
    name: 'North-east limb',
    bearingDeg: 41,
    atM: 0.67,
    lengthM: 0.58,
    uprightDeg: 46,
    baseDiameterM: 0.028,
  },
];

/** Where the laterals of a limb leave it (share of its length), how far they swing from it, and how long they are. */
const lateralPlan = [
  { at: 0.34, swingDeg: -58, uprightDeg: 42, lengthM: 0.33, buds: 4 },
  { at: 0.58, swingDeg: 61, uprightDeg: 55, lengthM: 0.37, buds: 3 },
  { at: 0.81, swingDeg: -44, uprightDeg: 60, lengthM: 0.3, buds: 3 },
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
      tipUprightDeg: limb.uprightDeg - 24,
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
      [tipM - 0.094, tipM - 0.041, tipM],
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
        bearingDeg: limb.bearingDeg + plan.swingDeg + between(-9, 9, seed, word, 3, attempt),
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
    const fromTip = (count - 1 - i) * 0.056;
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
  for (const wood of bare.axes)
    wood.buds.forEach((bud, i) => addShoot(tree, wood.id, bud, i, wood.buds.length));
  return tree;
}

function addShoot(tree: TreeInHand, woodId: string, bud: Bud, i: number, count: number): void {
  const word = hashText(bud.id);
  const { wood, path } = tree.standing(woodId);
  const rank = count === 1 ? 1 : i / (count - 1);
  const lengthM = mm((0.17 + 0.27 * rank) * Math.exp(0.16 * randomNormal(seed, word, 1)));
  const outward = outwardAt(path, bud.atM, bud.aroundDeg);
  const along = tangentAt(path, bud.atM);
  const lean = i === count - 1 ? 0.35 : 1.15;
  tree.addClear(0.006, 80, (attempt) => {
    const nudge: Vec3 = [
      between(-1, 1, seed, word, attempt, 5),
      between(-0.3, 1, seed, word, attempt, 6),
      between(-1, 1, seed, word, attempt, 7),
    ];
    const start = normalize(
      add(add(along, scale(outward, lean)), add([0, 0.45, 0], scale(nudge, 0.05 + attempt * 0.012))),
    );
    const uprightDeg = Math.min(fromUprightDeg(start), 88);
    return {
      id: `${bud.id}-shoot`,
      name: `${wood.name}, shoot ${i + 1}`,
      kind: 'shoot',
      parentId: woodId,
      atM: bud.atM,
      path: crookedPath(
        {
          bearingDeg: bearingDeg(start),
          uprightDeg,
          tipUprightDeg: uprightDeg * between(0.3, 0.55, seed, word, 8),
          lengthM,
          stretches: 5,
          strayDeg: 5,
        },
        seed,
        word,
        attempt,
      ),
      // Published pairs of fig shoots, 18 mm with 100 cm and 23 mm with 150 cm, give length ~ thickness^1.65.
      baseDiameterM: mm(0.018 * lengthM ** (1 / 1.65)),
      tipDiameterM: mm(Math.min(0.005, 0.012 * lengthM ** (1 / 1.65))),
      grownIn: 2026,
      foliage: {
        count: Math.round(3.4 + (lengthM / 0.047) * between(0.9, 1.1, seed, word, 10)),
        midribM: Math.round(1000 * (0.128 + 0.075 * lengthM + between(-0.008, 0.008, seed, word, 11))) / 1000,
        source: 'measured',
      },
    };
  });
}

const place: Pick<TreeFile, 'species' | 'cultivar' | 'site' | 'standing'> = {
  species: 'fig',
  cultivar: { name: 'Brown seedling', ripening: 'mid', bearsFirstCrop: true },
  site: {
    name: 'Courtyard in Varnoux-le-Haut',
    latitudeDeg: 47.13,
    longitudeDeg: 5.87,
    timeZone: 'Europe/Paris',
    elevationM: 318,
    groundReflectance: 0.22,
    viewpoint: { name: 'the house', bearingDeg: 357 },
    climate: {
      source: 'guess',
      meanC: [1.9, 3.1, 6.9, 10.4, 14.6, 18.2, 20.4, 19.9, 15.8, 11.3, 5.9, 2.7],
      minC: [-1.1, -0.7, 2.1, 4.8, 9, 12.4, 14.4, 14, 10.7, 7.3, 2.8, 0.1],
      sunshineH: [2, 3.3, 4.9, 6.3, 6.9, 7.9, 8.3, 7.4, 5.8, 3.6, 2.2, 1.7],
    },
    frost: { lastOfSpring: '04-21', firstOfAutumn: '10-24' },
    surroundings: [
      {
        kind: 'wall',
        name: 'House wall',
        from: [-4.1, 1.62],
        to: [3.3, 1.91],
        heightM: 3.4,
        thicknessM: 0.38,
        reflectance: 0.46,
      },
    ],
  },
  standing: {
    pot: { topDiameterM: 0.45, baseDiameterM: 0.35, heightM: 0.41, soilBelowRimM: 0.04 },
    at: [0, 0],
    turnedDeg: 0,
  },
};

const head = (id: string, name: string, note: string) => ({
  $schema: '../schema/boughlight-tree-1.schema.json',
  format: formatName as typeof formatName,
  version: currentVersion as typeof currentVersion,
  id,
  name,
  note,
});

export function pottedFigAtBudBreak(): TreeFile {
  return {
    ...head(
      'potted-fig-bud-break',
      'Potted fig by the house wall, at bud break',
      'An invented tree. Every bud that lives is entered; the question is which of them to rub off.',
    ),
    ...place,
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
    ...place,
    season: { budBreakOn: '2026-04-14', sketchedOn: '2026-07-12' },
    settings: {},
    axes: leafyTree().axes,
  };
}
