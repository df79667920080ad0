/** A cut with all that the grower is told of it. */
import { radiusAtM } from '../geometry/tree.ts';
import { yearOf } from '../season/calendar.ts';
import { cautionsFor } from './cautions.ts';
import type { Cut, Place } from './cut.ts';
import type { PlanInput } from './input.ts';
import { passOf, passPeriods } from './passes.ts';
import { placeOfBud, placeOfCut } from './place.ts';
import { type RuleContext, ruleContext } from './ruleContext.ts';
import { type Stage, type WorkYear, windowFor } from './windows.ts';

/** Throws when the tree has no such axis or bud. */
export function describeCut(
  cut: Omit<Cut, 'place' | 'when' | 'pass' | 'cautions'>,
  input: PlanInput,
  year: WorkYear,
  isPassOpen = false,
): Cut {
  const context = ruleContext(input.tree, input.stance, input.values);
  const { place, thicknessM } = whereIs(context, cut, year.stage);
  const facts = {
    kind: cut.kind,
    thicknessM,
    aboveGroundM: place.heightM + context.soilM,
    isShoot: place.piece !== null,
    atNarrowFork: cut.reasons.some((reason) => reason.rule === 'narrow fork'),
    isSick: cut.reasons.some((reason) => reason.rule === 'diseased'),
    treeAgeYears: yearOf(input.date) - context.trunk.axis.grownIn,
  };
  const pass = isPassOpen ? null : passOf(cut, year.stage, input.values);
  const when =
    pass === null
      ? windowFor(cut.reasons, year, input.date)
      : passPeriods(year.rubOff, input.date, input.values)[pass];
  return { ...cut, place, when, pass, cautions: cautionsFor(facts, input.values) };
}

function whereIs(
  context: RuleContext,
  cut: Pick<Cut, 'kind' | 'target' | 'atM'>,
  stage: Stage,
): { place: Place; thicknessM: number } {
  if (cut.kind !== 'rub off bud') {
    const axis = context.placed.get(cut.target);
    if (axis === undefined) throw new Error(`describeCut: the tree has no such axis, got ${cut.target}`);
    return { place: placeOfCut(context, axis, cut.atM), thicknessM: 2 * radiusAtM(axis, cut.atM) };
  }
  for (const axis of context.placed.values()) {
    const bud = axis.axis.buds.find(({ id }) => id === cut.target);
    if (bud === undefined) continue;
    const place = placeOfBud(context, axis, bud);
    return { place: stage === 'in leaf' ? { ...place, piece: 'shoot from this bud' } : place, thicknessM: 0 };
  }
  throw new Error(`describeCut: the tree has no such bud, got ${cut.target}`);
}
