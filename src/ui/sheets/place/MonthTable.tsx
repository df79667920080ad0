/** The weather typed month by month, or pasted twelve months at a time. */
import type { ClipboardEvent } from 'react';
import { type MonthRow, type Months, typeMonths } from '../../../editor/edits/climate.ts';
import { monthNames } from '../../../season/calendar.ts';
import { NumberField } from '../../fields/NumberField.tsx';
import { pastedMonths } from '../../fields/pastedMonths.ts';
import { quantities } from '../../fields/quantities.ts';
import { useFile, useUnits, useWorkbench } from '../../state/workbench.ts';
import { monthRows } from './monthRows.ts';
import { placeWords as words } from './words.ts';

export function MonthTable() {
  const { editor } = useWorkbench();
  const { climate } = useFile().site;
  const units = useUnits();
  const rows = monthRows(climate);
  const put = (row: MonthRow, month: number, value: number) =>
    editor.make((file) => {
      const before: readonly number[] = file.site.climate[row] ?? [];
      return typeMonths(file, { [row]: before.with(month, value) as Months });
    });
  const paste = (event: ClipboardEvent, from: number) => {
    const text = event.clipboardData.getData('text');
    const columns = pastedMonths(text);
    if (columns === null) {
      if (/\d\s*[\t\n;]\s*-?\d/.test(text)) {
        event.preventDefault();
        editor.say({ kind: 'refused', text: words.pasteRefused });
      }
      return;
    }
    event.preventDefault();
    const pasted = rows.slice(from, from + columns.length).map(({ row, as }, i) => {
      const read = (columns[i] ?? []).map((cell) => quantities[as].read(cell, units) ?? Number.NaN);
      return [row, read] as const;
    });
    editor.make((file) => typeMonths(file, Object.fromEntries(pasted)));
  };
  return (
    <table className="rows months">
      <caption className="quiet small">{words.monthsHow}</caption>
      <thead>
        <tr>
          <th scope="col">{words.month}</th>
          {rows.map(({ row, as }) => (
            <th key={row} scope="col" className="figure">
              {words.monthRows[row]} {quantities[as].unit(units)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {monthNames.map((name, month) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {rows.map(({ row, as, months }, column) => (
              <td key={row} onPaste={(event) => paste(event, column)}>
                <NumberField
                  isBare
                  label={`${words.monthRows[row]}, ${name}`}
                  value={months[month] ?? 0}
                  quantity={quantities[as]}
                  onCommit={(value) => put(row, month, value)}
                />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
