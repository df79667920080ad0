/** One branch or bud of the table. */
import { columns } from './columns.ts';
import { GridCell } from './GridCell.tsx';
import type { GridRow } from './rows.ts';
import type { BranchGridState } from './useBranchGrid.ts';
import { gridWords as words } from './words.ts';

interface GridLineProps {
  readonly row: GridRow;
  readonly index: number;
  readonly grid: BranchGridState;
}

export function GridLine({ row, index, grid }: GridLineProps) {
  const { file, units, selected, place, typing, ticked } = grid;
  const isSelected = row.id === selected;
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
              checked={ticked.includes(row.id)}
              onChange={() => grid.tick(row)}
            />
          </label>
        ) : null}
      </div>
      {columns.map((column, c) => (
        <GridCell
          key={column.id}
          column={column}
          text={column.text(row, file, units)}
          choices={column.choices(row, file)}
          isCurrent={index === place.row && c === place.column}
          begun={typing?.row === row.id && typing.column === c ? typing.begun : null}
          label={`${column.head}, ${row.axis.name}`}
          onEnter={() => grid.enter(row, c)}
          onBegin={() => grid.begin(row, c, null)}
          onDone={(text, by) => grid.finish(row, c, text, by)}
          onCancel={grid.cancel}
        />
      ))}
    </div>
  );
}
