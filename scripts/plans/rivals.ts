/** What a grower might do in place of the plan. Each does the plan's other work (dead wood, suckers, tips) and thins in its own way. */

import { pointAt } from '../../src/geometry/path.ts';
import { random01 } from '../../src/geometry/random.ts';
import type { CutToMake } from '../../src/plan/applyCuts.ts';
import type { Candidate } from '../../src/plan/candidates.ts';
import type { PlanResult } from '../../src/plan/planJob.ts';

export type Cuts = readonly CutToMake[];

const cutOf = ({ kind, id }: Candidate): CutToMake => ({ kind, target: id, atM: 0 });

/** Of those it is free to take, what the plan takes. */
export function takenOf({ plan, made }: PlanResult): readonly Candidate[] {
  const gone = new Set(plan.cuts.map(({ target }) => target));
  return made.work.choice.free.filter(({ id }) => gone.has(id));
}

/** All that goes beside what was chosen among the candidates. */
function otherWork(result: PlanResult): Cuts {
  const taken = new Set(takenOf(result).map(({ id }) => id));
  return result.plan.cuts.filter(({ target }) => !taken.has(target));
}

/** As many as the plan takes, drawn by chance; the growth that ends a branch last, where ends are spared. */
export function atRandom(result: PlanResult, draw: number, sparesEnds: boolean): Cuts {
  const { free } = result.made.work.choice;
  const order = free
    .map((one, i) => ({ one, at: random01(draw, i, 71) + (sparesEnds && one.leads ? 1 : 0) }))
    .sort((a, b) => a.at - b.at);
  const gone = order.slice(0, takenOf(result).length).map(({ one }) => cutOf(one));
  return [...otherWork(result), ...gone];
}

/** As many as the plan keeps, shared out over the branches by what they carry, on each at even steps from its end. */
export function evenly(result: PlanResult): Cuts {
  const { free } = result.made.work.choice;
  const keep = free.length - takenOf(result).length;
  const branches = [...new Set(free.map(({ on }) => on))].map((on) =>
    free.filter((one) => one.on === on).toSorted((a, b) => b.atM - a.atM),
  );
  const shares = sharedOut(
    keep,
    branches.map((on) => on.length),
  );
  const kept = new Set(
    branches.flatMap((on, b) => {
      const count = shares[b] as number;
      return Array.from({ length: count }, (_, k) => on[Math.floor((k * on.length) / count)]);
    }),
  );
  return [...otherWork(result), ...free.filter((one) => !kept.has(one)).map(cutOf)];
}

/** Whole numbers that add up to a sum, in proportion to the sizes: the largest remainders are rounded up. */
export function sharedOut(sum: number, sizes: readonly number[]): number[] {
  const all = sizes.reduce((a, b) => a + b, 0);
  const exact = sizes.map((size) => (all === 0 ? 0 : (sum * size) / all));
  const whole = exact.map(Math.floor);
  const left = sum - whole.reduce((a, b) => a + b, 0);
  const byRest = exact
    .map((x, i) => ({ i, rest: x - Math.floor(x) }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of byRest.slice(0, left)) whole[i] = (whole[i] as number) + 1;
  return whole;
}

/** All that sets out towards the trunk, seen from above. */
export function inwardGone(result: PlanResult): Cuts {
  const { work, input } = result.made;
  const [footEast, , footSouth] = input.stance.foot;
  const inward = work.choice.free.filter(({ on, atM, outward }) => {
    const [east, , south] = pointAt(on.path, atM);
    return on.parent !== null && outward[0] * (east - footEast) + outward[2] * (south - footSouth) < 0;
  });
  return [...otherWork(result), ...inward.map(cutOf)];
}
