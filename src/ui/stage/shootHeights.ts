/** How high above the ground the shoots are. */
import type { Canopy } from '../../growth/canopy.ts';

/** Mean height of the nodes of each shoot above the ground, metres, by id. */
export function shootHeights(canopy: Canopy): ReadonlyMap<string, number> {
  const sums = new Map<number, { sumM: number; count: number }>();
  for (const { owner, point } of canopy.nodes) {
    const { sumM, count } = sums.get(owner) ?? { sumM: 0, count: 0 };
    sums.set(owner, { sumM: sumM + point[1], count: count + 1 });
  }
  return new Map(
    canopy.shoots.flatMap(({ id, owner }) => {
      const sum = sums.get(owner);
      return sum === undefined ? [] : [[id, sum.sumM / sum.count] as const];
    }),
  );
}
