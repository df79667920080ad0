/** The figures of the weather that are shown and typed: days, nights, and the sun by its hours or by the clearness. */
import type { TreeFile } from '../../../document/treeFile.ts';
import type { MonthRow, Months } from '../../../editor/edits/climate.ts';

type Climate = TreeFile['site']['climate'];

export interface ShownRow {
  readonly row: MonthRow;
  readonly months: Months;
  readonly as: 'temperature' | 'hours' | 'share';
}

/** Every file has one of the two figures of the sun; this is for the compiler alone. */
const empty: Months = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];

export function monthRows(climate: Climate): readonly ShownRow[] {
  const { meanC, minC, sunshineH = empty, clearness } = climate;
  const sun: ShownRow =
    clearness === undefined
      ? { row: 'sunshineH', months: sunshineH, as: 'hours' }
      : { row: 'clearness', months: clearness, as: 'share' };
  return [
    { row: 'meanC', months: meanC, as: 'temperature' },
    { row: 'minC', months: minC, as: 'temperature' },
    sun,
  ];
}
