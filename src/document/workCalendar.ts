/** The days of a plan's work as a calendar file: one entry for the cuts of a step that are due at the same time, one for the pinch. */
import type { Units } from '../geometry/measure.ts';
import { briefPiece, stepTitle } from '../plan/briefWords.ts';
import { cautionText } from '../plan/cautions.ts';
import type { CautionKey, Cut } from '../plan/cut.ts';
import { pinchText } from '../plan/pinchWords.ts';
import type { Plan } from '../plan/plan.ts';
import { stepOf } from '../plan/steps.ts';
import { type CalendarEvent, calendarText } from './calendar.ts';
import type { TreeFile } from './treeFile.ts';

type Named = Pick<TreeFile, 'id' | 'name'>;

function eventOf(cuts: readonly Cut[], file: Named, units: Units): CalendarEvent {
  const [first] = cuts;
  if (first === undefined) throw new Error('eventOf: an entry needs a cut');
  const step = stepOf(first.kind, first.reasons);
  const lines = cuts.map((cut) => `${cut.place.branch}: ${briefPiece(cut, units)}`);
  const keys = new Set(cuts.flatMap(({ cautions }) => cautions));
  const minds = [...keys].map((key: CautionKey) => cautionText[key]);
  return {
    uid: `${file.id}/${step}/${first.when.from}`.replaceAll(' ', '-'),
    when: first.when,
    title: `${file.name}: ${stepTitle(first)} (${cuts.length})`,
    text: [...lines, '', ...minds].join('\n'),
  };
}

/**
 * @param cuts those that are to be made
 * @param stamp when it was written, UTC, as `Date.toISOString` gives it
 */
export function workCalendar(
  cuts: readonly Cut[],
  pinch: Plan['pinch'],
  file: Named,
  units: Units,
  stamp: string,
): string {
  const entries = new Map<string, Cut[]>();
  for (const cut of cuts) {
    const key = `${stepOf(cut.kind, cut.reasons)} ${cut.when.from} ${cut.when.to}`;
    entries.set(key, [...(entries.get(key) ?? []), cut]);
  }
  const events = [...entries.values()].map((some) => eventOf(some, file, units));
  const pinching: CalendarEvent[] =
    pinch === null
      ? []
      : [
          {
            uid: `${file.id}/pinch/${pinch.when.from}`,
            when: pinch.when,
            title: `${file.name}: pinch`,
            text: `${pinchText(pinch)}\n\n${cautionText.sap}`,
          },
        ];
  return calendarText([...events, ...pinching], stamp);
}
