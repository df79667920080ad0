/** Invented tree files of any size: one of the sample trees' places, with a vase of limbs and shoots in leaf on it. */
import { readFileSync } from 'node:fs';
import { parseTreeFile } from '../src/document/parseTreeFile.ts';
import type { TreeFile } from '../src/document/treeFile.ts';
import { random01 } from '../src/geometry/random.ts';
import { add, lerp, normalize, scale, type Vec3 } from '../src/geometry/vec.ts';
import { direction } from '../src/geometry/world.ts';

const leavesAShoot = 12;
const internodeM = 0.045;

const wood = { condition: 'live', pin: null, buds: [], foliage: null };

/** A straight limb or shoot in stretches of about 10 cm. */
function straight(toward: Vec3, lengthM: number): Vec3[] {
  const pieces = Math.max(2, Math.ceil(lengthM / 0.1));
  return Array.from({ length: pieces + 1 }, (_, k) => scale(toward, (lengthM * k) / pieces));
}

const trunk = {
  ...wood,
  id: 'trunk',
  name: 'Trunk',
  kind: 'trunk',
  parentId: null,
  atM: 0,
  path: straight([0, 1, 0], 0.5),
  baseDiameterM: 0.08,
  tipDiameterM: 0.06,
  grownIn: 2016,
};

/** A limb that leans outwards. */
function limbAxis(limb: number, toward: Vec3, lengthM: number, atM: number) {
  return {
    ...wood,
    id: `limb-${limb}`,
    name: `Limb ${limb + 1}`,
    kind: 'scaffold',
    parentId: 'trunk',
    atM,
    path: straight(toward, lengthM),
    baseDiameterM: 0.035,
    tipDiameterM: 0.012,
    grownIn: 2021,
  };
}

function shootAxis(shoot: number, limb: number, toward: Vec3, atM: number) {
  return {
    ...wood,
    id: `shoot-${shoot}`,
    name: `Limb ${limb + 1}, shoot ${shoot + 1}`,
    kind: 'shoot',
    parentId: `limb-${limb}`,
    atM,
    path: straight(toward, 0.1 + internodeM * leavesAShoot),
    baseDiameterM: 0.011,
    tipDiameterM: 0.005,
    grownIn: 2026,
    foliage: { count: leavesAShoot, midribM: 0.15, source: 'estimated' },
  };
}

/**
 * A vase of so many shoots of twelve leaves; twelve shoots a limb, about as dense at any size.
 * @param sample text of a sample tree file, whose place and season are taken
 */
export function figFile(sample: string, shootCount: number, seed = 5): TreeFile {
  const limbs = Math.max(3, Math.round(shootCount / 12));
  const reachM = 0.155 * (shootCount * leavesAShoot) ** (1 / 3);
  const axes: object[] = [trunk];
  for (let limb = 0; limb < limbs; limb++) {
    const draw = (what: number, shoot = 0): number => random01(seed, limb, what, shoot);
    const uprightDeg = 8 + 50 * Math.sqrt(draw(0));
    const toward = direction((360 * (limb + 0.3 * draw(1))) / limbs, 90 - uprightDeg);
    const lengthM = reachM * (0.8 + 0.4 * draw(2));
    axes.push(limbAxis(limb, toward, lengthM, 0.3 + 0.19 * draw(3)));
    const last = Math.round(((limb + 1) * shootCount) / limbs);
    for (let shoot = Math.round((limb * shootCount) / limbs); shoot < last; shoot++) {
      const outward = direction(360 * draw(4, shoot), 20 * draw(5, shoot));
      const leaning = normalize(add(lerp(toward, [0, 1, 0], 0.3), outward));
      axes.push(shootAxis(shoot, limb, leaning, lengthM * (0.25 + 0.74 * draw(6, shoot))));
    }
  }
  const read = parseTreeFile(JSON.stringify({ ...JSON.parse(sample), id: 'vase', name: 'Vase', axes }));
  if (!read.ok) throw new Error(`figFile: ${read.reason}, at ${read.where}`);
  return read.file;
}

export const sampleFile = (root: string): string =>
  readFileSync(`${root}/public/examples/potted-fig-in-leaf.json`, 'utf8');
