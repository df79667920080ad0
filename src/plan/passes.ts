/** Two passes over the buds, two weeks apart: what is sure goes now, at the rest one looks again. */
import { addDays } from '../season/calendar.ts';
import type { IsoDate, Period } from '../season/site.ts';
import type { FigValues } from '../species/fig.ts';
import type { Cut } from './cut.ts';
import type { Stage } from './windows.ts';

export type Pass = 1 | 2;

type Weighed = Pick<Cut, 'kind' | 'reasons' | 'gain' | 'standsIn'>;

/**
 * First what a rule takes, and what is right in most plausible worlds, as is that it goes rather than its rival; where no worlds were
 * tried, what brings a clear gain. Second the rest: in two weeks it is seen which buds have failed. Null for all but buds that are
 * rubbed off as they break.
 */
export function passOf(cut: Weighed, stage: Stage, values: FigValues): Pass | null {
  if (cut.kind !== 'rub off bud' || stage !== 'bud break') return null;
  return !cut.reasons.some(({ rule }) => rule === 'crowding') || isSure(cut, values) ? 1 : 2;
}

function isSure({ gain, standsIn }: Weighed, { sureFromFigs, sureFromShare }: FigValues): boolean {
  if (standsIn === null) return gain.figs >= sureFromFigs;
  const { worlds, stands, rival } = standsIn;
  return Math.min(stands, rival?.stands ?? worlds) >= sureFromShare * worlds;
}

/** From the day of the work, or bud break if that is later; the second pass ends with the time for rubbing off. */
export function passPeriods(
  rubOff: Period,
  date: IsoDate,
  { passDays }: FigValues,
): { readonly [P in Pass]: Period } {
  const from = date > rubOff.from ? date : rubOff.from;
  const again = addDays(from, Math.round(passDays));
  if (again > rubOff.to) return { 1: { from, to: rubOff.to }, 2: { from: rubOff.to, to: rubOff.to } };
  return { 1: { from, to: addDays(again, -1) }, 2: { from: again, to: rubOff.to } };
}

/** The first pass before the second among neighbours that have one; all else where it was. */
export function inPasses<Passed extends { readonly pass: Pass | null }>(cuts: readonly Passed[]): Passed[] {
  const [begins, ends] = [
    cuts.findIndex(({ pass }) => pass !== null),
    cuts.findLastIndex(({ pass }) => pass !== null),
  ];
  if (begins < 0) return [...cuts];
  const middle = cuts.slice(begins, ends + 1);
  const late = middle.filter(({ pass }) => pass === 2);
  return [
    ...cuts.slice(0, begins),
    ...middle.filter(({ pass }) => pass !== 2),
    ...late,
    ...cuts.slice(ends + 1),
  ];
}
