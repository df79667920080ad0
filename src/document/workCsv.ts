/** The cut list as a table for a spreadsheet: one row a cut, lengths in metres whatever the units on show. */

import type { Units } from '../geometry/measure.ts';
import type { Cut } from '../plan/cut.ts';
import type { Plan } from '../plan/plan.ts';
import { stepOf } from '../plan/steps.ts';
import { placeText, reasonText, type Viewpoint, whatText } from '../plan/words.ts';
import { type Cell, csvText } from './csv.ts';

const columns = [
  'number',
  'ticked',
  'advice',
  'step',
  'pass',
  'what',
  'where',
  'branch',
  'along_m',
  'height_m',
  'why',
  'figs_gained',
  'fruiting_shoot_gained_m',
  'right_in',
  'of_worlds',
  'from',
  'to',
  'id',
];

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));

/** @param ticked ids of the cuts that are to be made */
export function workCsv(
  { cuts, yourCall }: Pick<Plan, 'cuts' | 'yourCall'>,
  ticked: ReadonlySet<string>,
  units: Units,
  viewpoint: Viewpoint | null,
): string {
  const row = (cut: Cut, i: number): Cell[] => [
    i + 1,
    ticked.has(cut.id) ? 'yes' : 'no',
    i < cuts.length ? 'advised' : 'your call',
    stepOf(cut.kind, cut.reasons),
    cut.pass,
    whatText(cut),
    placeText(cut, units, viewpoint),
    cut.place.branch,
    rounded(cut.place.fromForkM, 3),
    rounded(cut.place.heightM, 3),
    cut.reasons.map((reason) => reasonText(reason, units)).join(' '),
    rounded(cut.gain.figs, 2),
    rounded(cut.gain.fruitingWoodM, 3),
    cut.standsIn?.stands ?? null,
    cut.standsIn?.worlds ?? null,
    cut.when.from,
    cut.when.to,
    cut.id,
  ];
  return csvText([columns, ...[...cuts, ...yourCall].map(row)]);
}
