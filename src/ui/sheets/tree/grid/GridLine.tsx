/** One branch or bud of the table. It is drawn anew only when what it shows has changed: trees have hundreds of lines. */
import { memo } from 'react';
import type { TreeAxis } from '../../../../editor/edit.ts';
import type { Units } from '../../../../geometry/measure.ts';
import { useWorkbench } from '../../../state/workbench.ts';
import { columns } from './columns.ts';
import { GridCell } from './GridCell.tsx';
import type { GridRow } from './rows.ts';
import type { GridCalls } from './useBranchGrid.ts';
import type { Typing } from './useTyping.ts';
import { gridWords as words } from './words.ts';

interface GridLineProps {
  readonly row: GridRow;
  /** What it grows on: its name and its course are shown with the branch. */
  readonly parent: TreeAxis | null;
  readonly units: Units;
  readonly isSelected: boolean;
  /** Of the cell that is reached by Tab, when it is in this line. */
  readonly currentColumn: number | null;
  /** When it is in this line. */
  readonly typing: Typing | null;
  readonly isTicked: boolean;
  readonly calls: GridCalls;
}

/** What a name shares with that of the branch it grows on, which stands above it: "East limb, " of "East limb, shoot 2". */
const leadOf = ({ axis, bud }: GridRow, parent: TreeAxis | null): string => {
  const lead = `${parent?.name ?? ''}, `;
  return bud === null && axis.name.startsWith(lead) ? lead : '';
};

function Line(props: GridLineProps) {
  const { row, parent, units, isSelected, currentColumn, typing, isTicked, calls } = props;
  const file = useWorkbench().editor.file();
  return (
    <div
      role="row"
      data-id={row.id}
      aria-level={row.level}
      aria-selected={isSelected}
      className={`grid-line level-${Math.min(row.level, 5)}${isSelected ? ' is-selected' : ''}`}
    >
      <div role="rowheader" className="grid-tick">
        {row.bud === null ? (
          <label className="tick">
            <input
              type="checkbox"
              tabIndex={-1}
              aria-label={words.tick(row.axis.name)}
              checked={isTicked}
              onChange={() => calls.tick(row)}
            />
          </label>
        ) : null}
      </div>
      {columns.map((column, c) => (
        <GridCell
          key={column.id}
          column={column}
          row={row}
          text={column.text(row, file, units)}
          lead={column.id === 'name' ? leadOf(row, parent) : ''}
          isFixed={column.edit(row, '', file, units) === 'fixed'}
          isCurrent={c === currentColumn}
          begun={typing?.column === c ? typing.begun : null}
          onEnter={() => calls.enter(row, c)}
          onBegin={() => calls.begin(row, c, null)}
          onDone={(text, by) => calls.finish(row, c, text, by)}
          onCancel={calls.cancel}
        />
      ))}
    </div>
  );
}

/** The row is made anew with each change of the file; what it stands for is not. */
const isSame = ({ row: a, ...before }: GridLineProps, { row: b, ...now }: GridLineProps): boolean =>
  a.axis === b.axis &&
  a.bud === b.bud &&
  a.level === b.level &&
  (Object.keys(now) as (keyof typeof now)[]).every((name) => before[name] === now[name]);

export const GridLine = memo(Line, isSame);
