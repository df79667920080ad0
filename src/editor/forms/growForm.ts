/** A form grown to a tree: thickness by the rule of branch areas, a place with room for all, shoots or buds. */
import { type Carried, taperFor } from '../../geometry/branchArea.ts';
import { tenthMm } from '../../geometry/crookedPath.ts';
import { pathLengthM } from '../../geometry/path.ts';
import { hashText, randomNormal } from '../../geometry/random.ts';
import { wrapDeg } from '../../geometry/world.ts';
import { baseDiameterM, internodeShare } from '../../growth/shootForm.ts';
import { figForms } from '../../species/fig/forms.ts';
import type { FigValues } from '../../species/fig.ts';
import { cordonFrame, fanFrame } from './flatFrames.ts';
import type { FormFigures, FormName } from './formFigures.ts';
import type { PlannedShoot, PlannedWood } from './plannedWood.ts';
import { bareFrame, branchedFrame, scaffoldHabit, stemHabit, stubFrame } from './roundFrames.ts';
import { type ShootPlan, shootOffer, shootWood } from './shootOffer.ts';
import { type NewWood, TreeInHand, type Wood } from './treeInHand.ts';

/** What stands on the wood: this season's shoots in leaf, or the buds they would come from. */
export type Growth = 'shoots' | 'buds';

export interface Growing {
  readonly growth: Growth;
  /** Calendar year of this season's growth. */
  readonly year: number;
  readonly values: FigValues;
  readonly seed: number;
}

const frames: Readonly<Record<FormName, (figures: FormFigures, seed: number) => PlannedWood>> = {
  'open-vase': (figures, seed) => branchedFrame(figures, scaffoldHabit, seed),
  'single-stem': (figures, seed) => branchedFrame(figures, scaffoldHabit, seed),
  'hard-pruned-vase': stubFrame,
  bush: (figures, seed) => branchedFrame(figures, stemHabit, seed),
  fan: fanFrame,
  cordon: cordonFrame,
  'step-over': cordonFrame,
  'bare-stem': bareFrame,
};

/** Wood that bears nothing yet is no thinner, our choice: at its tip, and as a share of its length at its base. */
const thinnestTipM = 0.006;
const thinnestShare = 0.016;
/** Air asked for round new wood and how often it is sought, our choice: beyond that it is the bark of a thicket. */
const air = { lateralM: 0.035, shootM: 0.03, tries: 30 };

interface Sized {
  readonly wood: PlannedWood;
  readonly lengthM: number;
  readonly baseM: number;
  readonly tipM: number;
  readonly carries: readonly Sized[];
}

/** The same on every call for the same figures and seed; axes in order, parents first. */
export function growForm(form: FormName, figures: FormFigures, growing: Growing): Wood[] {
  const tree = new TreeInHand();
  const shootsOf = (wood: PlannedWood) => plannedShoots(wood, figures.shootM, growing);
  const sized = sizeUp(frames[form](figures, growing.seed), shootsOf, growing.values);
  const level: [Sized, Sized | null][] = [[sized, null]];
  for (let next = level.shift(); next !== undefined; next = level.shift()) {
    const [one, parent] = next;
    place(tree, one, parent, growing);
    level.push(...one.carries.map((child): [Sized, Sized] => [child, one]));
  }
  if (growing.growth === 'buds') return tree.axes.map((axis) => withBuds(axis, sized, shootsOf));
  growShoots(tree, sized, shootsOf, growing);
  return tree.axes;
}

function* eachOf(sized: Sized): Generator<Sized> {
  yield sized;
  for (const child of sized.carries) yield* eachOf(child);
}

type ShootsOf = (wood: PlannedWood) => readonly (PlannedShoot & { readonly lengthM: number })[];

/** This season's shoots with their lengths, each a little off the usual one. */
function plannedShoots(wood: PlannedWood, shootM: number, { seed }: Growing): ReturnType<ShootsOf> {
  return wood.shoots.map((shoot, i) => {
    const chance = Math.exp(0.12 * randomNormal(seed, hashText(wood.id), 21, i));
    return { ...shoot, lengthM: tenthMm(Math.min(2, Math.max(0.04, shootM * shoot.strength * chance))) };
  });
}

/** Thickness from the shoots down to the trunk. */
function sizeUp(wood: PlannedWood, shootsOf: ShootsOf, values: FigValues): Sized {
  const carries = wood.carries.map((child) => sizeUp(child, shootsOf, values));
  const lengthM = pathLengthM(wood.course(0));
  const carried: Carried[] = [
    ...carries.map(({ wood: child, baseM }) => ({ share: child.share, diameterM: baseM })),
    ...shootsOf(wood).map((shoot) => ({
      share: shoot.share,
      diameterM: baseDiameterM(shoot.lengthM, values),
    })),
  ];
  const { baseM, tipM } = taperFor(
    carried,
    lengthM * thinnestShare,
    thinnestTipM,
    figForms.branchAreaExponent.value,
  );
  return { wood, lengthM, baseM: tenthMm(baseM), tipM: tenthMm(tipM), carries };
}

function place(tree: TreeInHand, { wood, baseM, tipM }: Sized, parent: Sized | null, growing: Growing): void {
  const atM = parent === null ? 0 : along(tree.lengthM(parent.wood.id), wood.share);
  const offer = (attempt: number): NewWood => ({
    id: wood.id,
    name: wood.name,
    kind: wood.kind,
    parentId: parent?.wood.id ?? null,
    atM,
    path: wood.course(attempt),
    baseDiameterM: baseM,
    tipDiameterM: tipM,
    grownIn: growing.year - wood.ageYears,
  });
  tree.addClearest(air.lateralM, air.tries, offer);
}

/** A place along wood, to 0.1 mm and never beyond the tip. */
const along = (lengthM: number, share: number): number => Math.floor(1e4 * share * lengthM) / 1e4;

const growthId = (woodId: string, i: number): string => `${woodId}-s${i + 1}`;

function withBuds(axis: Wood, sized: Sized, shootsOf: ShootsOf): Wood {
  const one = [...eachOf(sized)].find(({ wood }) => wood.id === axis.id);
  if (one === undefined) return axis;
  const lengthM = pathLengthM(axis.path);
  const buds = shootsOf(one.wood).map(({ share, aroundDeg }, i) => ({
    id: growthId(axis.id, i),
    atM: along(lengthM, share),
    aroundDeg: Math.round(wrapDeg(aroundDeg) * 100) / 100,
    pin: null,
  }));
  return { ...axis, buds };
}

function growShoots(tree: TreeInHand, sized: Sized, shootsOf: ShootsOf, growing: Growing): void {
  const { values, year, seed } = growing;
  for (const { wood } of eachOf(sized)) {
    const lengthM = tree.lengthM(wood.id);
    shootsOf(wood).forEach((shoot, i) => {
      const plan: ShootPlan = {
        id: growthId(wood.id, i),
        name: `${wood.name}, shoot ${i + 1}`,
        woodId: wood.id,
        atM: along(lengthM, shoot.share),
        aroundDeg: shoot.aroundDeg,
        lengthM: shoot.lengthM,
        grownIn: year,
        lean: shoot.lean,
        leafCount: leavesOn(shoot.lengthM, values),
        midribM: values.leafMidribCm / 100,
        source: 'estimated',
      };
      tree.addClearest(air.shootM, air.tries, offerOf(tree, plan, shoot, values, seed));
    });
  }
}

/** A tied shoot keeps its course within a few degrees; any other seeks the light. */
function offerOf(
  tree: TreeInHand,
  plan: ShootPlan,
  { tied }: PlannedShoot,
  values: FigValues,
  seed: number,
): (attempt: number) => NewWood {
  if (tied === undefined) return shootOffer(tree, plan, values, seed);
  const word = hashText(plan.id);
  return (attempt) => {
    const off = attempt === 0 ? 0 : 6 * randomNormal(seed, word, 5, attempt);
    const bend = {
      bearingDeg: tied.bearingDeg + 3 * off,
      uprightDeg: tied.uprightDeg + off,
      tipUprightDeg: tied.tipUprightDeg,
      lengthM: plan.lengthM,
      stretches: 5,
      strayDeg: 3,
    };
    return shootWood(plan, bend, values, seed, word, attempt);
  };
}

/** As many leaves as usual internodes need to make up the length, short ones at both ends. */
function leavesOn(lengthM: number, values: FigValues): number {
  const internodeM = values.internodeBalancedCm / 100;
  for (let count = 3; ; count++) {
    let upToM = 0;
    for (let node = 1; node <= count; node++) upToM += internodeM * internodeShare(node, count);
    if (upToM >= lengthM) return count;
  }
}
