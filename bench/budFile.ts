/** Invented trees at bud break with so many buds, in the place of a sample tree: short limbs that shade each other. */
import { readFileSync } from 'node:fs';
import { parseTreeFile } from '../src/document/parseTreeFile.ts';
import type { TreeFile } from '../src/document/treeFile.ts';
import { random01 } from '../src/geometry/random.ts';
import { scale, type Vec3 } from '../src/geometry/vec.ts';
import { direction } from '../src/geometry/world.ts';

const wood = { condition: 'live', pin: null, buds: [], foliage: null };

const straight = (toward: Vec3, lengthM: number): Vec3[] =>
  [0, 0.5, 1].map((s) => scale(toward, s * lengthM));

/** Twelve buds a limb on 55 to 85 cm of wood, the buds a golden angle apart. */
export function budFile(budCount: number, seed = 5): TreeFile {
  const sample = readFileSync('public/examples/potted-fig-bud-break.json', 'utf8');
  const limbs = Math.max(3, Math.round(budCount / 12));
  const axes: object[] = [
    {
      ...wood,
      id: 'trunk',
      name: 'Trunk',
      kind: 'trunk',
      parentId: null,
      atM: 0,
      path: straight([0, 1, 0], 0.6),
      baseDiameterM: 0.06,
      tipDiameterM: 0.045,
      grownIn: 2018,
    },
  ];
  for (let limb = 0; limb < limbs; limb++) {
    const draw = (what: number): number => random01(seed, limb, what);
    const first = Math.round((limb * budCount) / limbs);
    const count = Math.round(((limb + 1) * budCount) / limbs) - first;
    const lengthM = 0.55 + 0.3 * draw(1);
    axes.push({
      ...wood,
      id: `limb-${limb}`,
      name: `Limb ${limb + 1}`,
      kind: 'scaffold',
      parentId: 'trunk',
      atM: 0.34 + 0.22 * draw(2),
      path: straight(direction((360 * (limb + 0.4 * draw(3))) / limbs, 30 + 35 * draw(4)), lengthM),
      baseDiameterM: 0.028,
      tipDiameterM: 0.012,
      grownIn: 2022,
      buds: Array.from({ length: count }, (_, i) => ({
        id: `bud-${first + i}`,
        atM: (lengthM * (i + 1)) / (count + 1),
        aroundDeg: (137.5 * i + 90 * draw(5)) % 360,
        pin: null,
      })),
    });
  }
  const read = parseTreeFile(JSON.stringify({ ...JSON.parse(sample), id: 'buds', name: 'Buds', axes }));
  if (!read.ok) throw new Error(`budFile: ${read.reason}, at ${read.where}`);
  return read.file;
}
