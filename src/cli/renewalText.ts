/** Ways to renew a tree, as lines of text. */
import type { Units } from '../geometry/measure.ts';
import { cautionText } from '../plan/cautions.ts';
import type { Plan } from '../plan/plan.ts';
import { renewalCutText, renewalTitle, renewalYearText } from '../plan/renewalWords.ts';
import type { Viewpoint } from '../plan/words.ts';
import { wrapped } from './table.ts';

const lineWidth = 100;

/** None when it was not asked for. */
export function renewalLines(renewal: Plan['renewal'], units: Units, viewpoint: Viewpoint | null): string[] {
  if (renewal === undefined) return [];
  if (renewal.length === 0) {
    const none =
      'Renewal: the tree has neither a strong sucker at its base nor three limbs from its trunk that are free to go.';
    return ['', ...wrapped(none, lineWidth, '', '  ')];
  }
  return renewal.flatMap((way) => {
    const cautions = new Set(way.years.flatMap(({ cuts }) => cuts.flatMap((cut) => cut.cautions)));
    return [
      '',
      ...wrapped(renewalTitle(way), lineWidth, '', '  '),
      ...way.years.flatMap((year) => [
        `  ${renewalYearText(year)}`,
        ...year.cuts.flatMap((cut) =>
          wrapped(renewalCutText(cut, units, viewpoint), lineWidth, '    ', '      '),
        ),
      ]),
      ...[...cautions].flatMap((key) => wrapped(`Caution: ${cautionText[key]}`, lineWidth, '  ', '    ')),
    ];
  });
}
