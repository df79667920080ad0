/** Forms whose limbs stand round the trunk: open vase, single stem, bush, hard-pruned vase, bare stem. */

import { crookedPath } from '../../geometry/crookedPath.ts';
import { hashText, random01, randomNormal } from '../../geometry/random.ts';
import { wrapDeg } from '../../geometry/world.ts';
import { figForms } from '../../species/fig/forms.ts';
import type { FormFigures } from './formFigures.ts';
import {
  limbNames,
  type PlannedShoot,
  type PlannedWood,
  reaching,
  rising,
  sharedOut,
  spiralShoots,
} from './plannedWood.ts';

/** How the limbs of a form go; angles from upright, degrees. Those without a source are our choice. */
export interface Habit {
  readonly word: string;
  readonly uprightDeg: number;
  readonly tipUprightDeg: number;
  readonly gapM: number;
}

export const scaffoldHabit: Habit = {
  word: 'limb',
  uprightDeg: figForms.scaffoldUpright.value,
  tipUprightDeg: figForms.scaffoldUpright.value - 17,
  gapM: figForms.scaffoldGap.value / 100,
};
/** Stems leave the stump wide enough for a sound fork and then stand up. */
export const stemHabit: Habit = { word: 'stem', uprightDeg: 52, tipUprightDeg: 14, gapM: 0.005 };
export const armHabit: Habit = { ...scaffoldHabit, word: 'arm', gapM: 0.08 };

/** The trunk up to its last fork. */
export function trunkOf(topM: number, carries: readonly PlannedWood[], seed: number): PlannedWood {
  const bend = {
    bearingDeg: 360 * random01(seed, 1),
    uprightDeg: 1.5,
    tipUprightDeg: 2.5,
    stretches: 4,
    strayDeg: 2,
  };
  return {
    id: 'trunk',
    name: 'Trunk',
    kind: 'trunk',
    share: 0,
    ageYears: 5,
    course: () => rising(bend, topM, seed, 2),
    carries,
    shoots: [],
  };
}

/** Bearings round the trunk, each a little off the even spread. */
const round = ({ limbs, towardsDeg }: FormFigures, seed: number): number[] =>
  Array.from({ length: limbs }, (_, i) =>
    wrapDeg(towardsDeg + (i * 360) / limbs + (i === 0 ? 0 : 16 * (random01(seed, 3, i) - 0.5))),
  );

/** Limbs one above the other on the trunk, the first at its height. */
function onTrunk(
  { trunkM, limbs }: FormFigures,
  gapM: number,
  limb: (i: number, share: number) => PlannedWood,
  seed: number,
): PlannedWood {
  const topM = trunkM + (limbs - 1) * gapM;
  const carried = Array.from({ length: limbs }, (_, i) => limb(i, (trunkM + i * gapM) / topM));
  return trunkOf(topM, carried, seed);
}

/** Scaffolds or stems with laterals to either side, shoots on the outer parts of both. */
export function branchedFrame(figures: FormFigures, habit: Habit, seed: number): PlannedWood {
  const { limbs, laterals, shoots, spreadM } = figures;
  const bearings = round(figures, seed);
  const names = limbNames(bearings, habit.word);
  const perLimb = sharedOut(shoots, limbs);
  const limb = (i: number, share: number): PlannedWood => {
    const id = `limb-${i + 1}`;
    const word = hashText(id);
    const bearingDeg = bearings[i] as number;
    const name = names[i] as string;
    const counts = sharedOut(perLimb[i] as number, laterals + 1);
    const lean = 3 * randomNormal(seed, word, 1);
    const bend = {
      bearingDeg,
      uprightDeg: Math.min(65, Math.max(40, habit.uprightDeg + lean)),
      tipUprightDeg: habit.tipUprightDeg + lean,
      stretches: 6,
      strayDeg: 4,
    };
    return {
      id,
      name,
      kind: 'scaffold',
      share,
      ageYears: 3,
      course: () => reaching(bend, spreadM / 2, seed, word),
      carries: Array.from({ length: laterals }, (_, j) =>
        lateral({ id: `${id}-${j + 1}`, name: `${name}, lateral ${j + 1}` }, j, {
          laterals,
          spreadM,
          limbDeg: bearingDeg,
          hand: i % 2 === 0 ? 1 : -1,
          shoots: counts[j] as number,
          seed,
        }),
      ),
      shoots: endShoots(counts[laterals] as number, laterals === 0 ? 0.35 : 0.86, seed, word),
    };
  };
  return onTrunk(figures, habit.gapM, limb, seed);
}

const endShoots = (count: number, from: number, seed: number, word: number): PlannedShoot[] =>
  spiralShoots(count, from, 360 * random01(seed, word, 7));

interface OnLimb {
  readonly laterals: number;
  readonly spreadM: number;
  readonly limbDeg: number;
  /** Which side the first takes. */
  readonly hand: number;
  readonly shoots: number;
  readonly seed: number;
}

/** To the sides of its limb by turns, the inner ones the longer. Figures: our choice, after the usual look. */
function lateral(named: { id: string; name: string }, j: number, on: OnLimb): PlannedWood {
  const { laterals, spreadM, seed } = on;
  const word = hashText(named.id);
  const rank = laterals === 1 ? 0.5 : j / (laterals - 1);
  const side = on.hand * (j % 2 === 0 ? 1 : -1);
  const lengthM = Math.max(0.12, spreadM * (0.29 - 0.07 * rank)) * (0.9 + 0.2 * random01(seed, word, 1));
  return {
    ...named,
    kind: 'lateral',
    share: 0.36 + 0.42 * rank,
    ageYears: 1,
    course: (attempt) =>
      crookedPath(
        {
          bearingDeg: on.limbDeg + side * 54 + 18 * (random01(seed, word, 3, attempt) - 0.5),
          uprightDeg: 58 + 10 * (random01(seed, word, 4, attempt) - 0.5),
          tipUprightDeg: 38,
          lengthM,
          stretches: 4,
          strayDeg: 5,
        },
        seed,
        word,
        attempt,
      ),
    carries: [],
    shoots: endShoots(on.shoots, 0.4, seed, word),
  };
}

/** Arms that were doubled winter after winter; every shoot stands on a stub. */
export function stubFrame(figures: FormFigures, seed: number): PlannedWood {
  const { limbs, laterals: doublings, shoots, spreadM } = figures;
  const bearings = round(figures, seed);
  const names = limbNames(bearings, armHabit.word);
  const heads = 2 ** doublings;
  const perHead = sharedOut(shoots, limbs * heads);
  const limb = (i: number, share: number): PlannedWood => {
    const id = `limb-${i + 1}`;
    const word = hashText(id);
    const bearingDeg = bearings[i] as number;
    const { uprightDeg, tipUprightDeg } = armHabit;
    const bend = { bearingDeg, uprightDeg, tipUprightDeg, stretches: 5, strayDeg: 3 };
    const name = names[i] as string;
    return {
      id,
      name,
      kind: 'scaffold',
      share,
      ageYears: doublings + 2,
      course: () => reaching(bend, spreadM / 2, seed, word),
      ...doubled(id, name, bearingDeg, doublings, perHead.slice(i * heads, (i + 1) * heads), seed),
    };
  };
  return onTrunk(figures, armHabit.gapM, limb, seed);
}

/** What an arm or stub carries at its end: two stubs, or its shoots. */
function doubled(
  id: string,
  name: string,
  bearingDeg: number,
  left: number,
  perHead: readonly number[],
  seed: number,
): Pick<PlannedWood, 'carries' | 'shoots'> {
  if (left === 0) return { carries: [], shoots: stubShoots(perHead[0] ?? 0, bearingDeg) };
  const half = perHead.length / 2;
  const carries = [-1, 1].map((hand, n): PlannedWood => {
    const stubId = `${id}-${n + 1}`;
    const stubName = `${name}, stub ${n + 1}`;
    const word = hashText(stubId);
    const towards = bearingDeg + hand * (34 + 8 * random01(seed, word, 1));
    const bend = {
      bearingDeg: towards,
      uprightDeg: 56,
      tipUprightDeg: 30,
      lengthM: figForms.stub.value / 100,
      stretches: 2,
      strayDeg: 3,
    };
    return {
      id: stubId,
      name: stubName,
      kind: 'lateral',
      share: 1,
      ageYears: left,
      course: () => crookedPath(bend, seed, word),
      ...doubled(stubId, stubName, towards, left - 1, perHead.slice(n * half, (n + 1) * half), seed),
    };
  });
  return { carries, shoots: [] };
}

/** Upright, the first from the end of the stub, others below it. */
const stubShoots = (count: number, bearingDeg: number): PlannedShoot[] =>
  Array.from({ length: count }, (_, i) => ({
    share: 1 - 0.5 * (i / Math.max(1, count)),
    aroundDeg: (i * 180) % 360,
    lean: i === 0 ? 0.3 : 1,
    strength: 1,
    tied: {
      bearingDeg: bearingDeg + (i === 0 ? 0 : 150 * (i % 2 === 0 ? -1 : 1)),
      uprightDeg: i === 0 ? 24 : 38,
      tipUprightDeg: 6,
    },
  })).reverse();

/** A stem alone, its shoots or buds from the base to the tip. */
export function bareFrame({ trunkM, shoots }: FormFigures, seed: number): PlannedWood {
  const trunk = trunkOf(trunkM, [], seed);
  return { ...trunk, ageYears: 1, shoots: endShoots(shoots, 0.15, seed, 11) };
}
