/** Small crowded trees with ten or eleven buds or shoots to choose from. */
import type { Tree } from '../../../src/geometry/tree.ts';
import type { PlanInput } from '../../../src/plan/input.ts';
import { figValues } from '../../../src/species/fig.ts';
import { bud, limb, planInput, straight, tree, trunk } from '../smallTree.ts';
import { summer, upright } from './knownTrees.ts';

/** Short limbs close together; buds so far apart, the outermost at the tip. */
function crowded(counts: readonly number[], apartM: number): Tree {
  return tree(
    trunk(),
    ...counts.map((count, l) =>
      limb(`limb${l}`, 17 + 122 * l, {
        path: straight(0.31, 17 + 122 * l, 47),
        atM: 0.43 + 0.06 * l,
        buds: Array.from({ length: count }, (_, i) =>
          bud(`b${l}-${i}`, 0.305 - apartM * i, (i * 137.5) % 360),
        ),
      }),
    ),
  );
}

/** The same limbs with shoots in leaf in place of the buds. */
function leafy(counts: readonly number[], apartM: number, leaves: number): Tree {
  const bare = crowded(counts, apartM);
  const shoots = bare.axes.flatMap(({ id, buds }) =>
    buds.map((one, i) =>
      upright(
        `s${one.id}`,
        id,
        one.atM,
        { leaves: leaves - i, lengthM: 0.4 - 0.04 * i, midribM: 0.21 },
        {
          path: straight(0.4 - 0.04 * i, one.aroundDeg, 51),
        },
      ),
    ),
  );
  return tree(...bare.axes.map((one) => ({ ...one, buds: [] })), ...shoots);
}

export interface BruteTree {
  readonly name: string;
  readonly input: PlanInput;
}

const fewPerLimb = figValues({ shootsPerScaffold: 3, keptShootSpacingCm: 12 });

export const bruteTrees = (seed: number): readonly BruteTree[] => {
  const seeds = { seed, leafSeed: seed + 100, waves: 2 };
  const leafed = { ...seeds, date: summer };
  return [
    { name: 'ten buds in open ground', input: planInput(crowded([4, 3, 3], 0.055), seeds) },
    {
      name: 'ten buds, three a limb and wide apart',
      input: planInput(crowded([5, 5], 0.045), { ...seeds, values: fewPerLimb }),
    },
    {
      name: 'ten buds in a small pot',
      input: planInput(crowded([4, 3, 3], 0.055), { ...seeds, potVolumeL: 23 }),
    },
    { name: 'eleven shoots in open ground', input: planInput(leafy([4, 4, 3], 0.055, 9), leafed) },
    {
      name: 'twelve shoots in a pot, a late kind',
      input: planInput(leafy([4, 4, 4], 0.05, 11), { ...leafed, potVolumeL: 31, ripening: 'late' }),
    },
    {
      name: 'eleven shoots far north',
      input: (() => {
        const plain = planInput(leafy([5, 6], 0.04, 8), { ...leafed, ripening: 'early' });
        return { ...plain, site: { ...plain.site, latitudeDeg: 58.3 } };
      })(),
    },
  ];
};

/** Ids of all buds and shoots. */
export const membersOf = ({ tree: of }: PlanInput): string[] =>
  of.axes.flatMap(({ id, foliage, buds }) => (foliage === null ? buds.map((one) => one.id) : [id]));
