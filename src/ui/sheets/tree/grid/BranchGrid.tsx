/** Branches and buds as a table in which every figure can be typed, by keys alone; the selection is the page's own. */
import { type KeyboardEvent, useMemo, useRef } from 'react';
import { columns } from './columns.ts';
import { GridLine } from './GridLine.tsx';
import './grid.css';
import { BranchTools } from '../tools/BranchTools.tsx';
import { GridTools } from './GridTools.tsx';
import { TickedTools } from './TickedTools.tsx';
import { type BranchGridState, useBranchGrid } from './useBranchGrid.ts';
import { useFollowing } from './useFollowing.ts';
import { gridWords as words } from './words.ts';

export function BranchGrid() {
  const whole = useRef<HTMLDivElement>(null);
  const grid = useBranchGrid(whole);
  const table = useRef<HTMLDivElement>(null);
  useFollowing(whole, table, grid);
  /** From the fields of a branch back to the table. */
  const keysOfTools = {
    onKeyDown(event: KeyboardEvent) {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      table.current?.querySelector<HTMLElement>('.grid-cell[tabindex="0"]')?.focus();
    },
  };
  return (
    <div className="branch-grid" ref={whole}>
      <GridTools grid={grid} />
      {grid.current === undefined ? null : (
        <div {...keysOfTools}>
          <BranchTools axis={grid.current.axis} keyHint="F9" />
        </div>
      )}
      {grid.ticked.length > 0 ? <TickedTools ticked={grid.ticked} /> : null}
      <div className="grid-scroll">
        <div
          ref={table}
          role="treegrid"
          tabIndex={-1}
          className="grid-table"
          aria-label={words.table}
          aria-describedby="grid-hint"
          {...grid.keys}
        >
          <Heads units={grid.units} />
          <Lines grid={grid} />
        </div>
      </div>
    </div>
  );
}

function Heads({ units }: Pick<BranchGridState, 'units'>) {
  return (
    <div role="rowgroup" className="grid-heads">
      <div role="row" className="grid-line">
        <div role="columnheader">
          <span className="unseen">{words.tickHead}</span>
        </div>
        {columns.map(({ id, head, quantity, isFigure }) => (
          <div key={id} role="columnheader" className={isFigure ? 'figure' : undefined}>
            {head} {quantity === null ? '' : <span className="quiet">{quantity.unit(units)}</span>}
          </div>
        ))}
      </div>
    </div>
  );
}

function Lines({ grid }: { readonly grid: BranchGridState }) {
  const { file, units, selected, rows, place, typing, ticked, calls } = grid;
  const axes = useMemo(() => new Map(file.axes.map((axis) => [axis.id, axis])), [file]);
  const isTicked = new Set(ticked);
  return (
    <div role="rowgroup" className="grid-body">
      {rows.map((row, index) => (
        <GridLine
          key={row.id}
          row={row}
          parent={axes.get(row.axis.parentId ?? '') ?? null}
          units={units}
          isSelected={row.id === selected}
          currentColumn={index === place.row ? place.column : null}
          typing={typing?.row === row.id ? typing : null}
          isTicked={isTicked.has(row.id)}
          calls={calls}
        />
      ))}
    </div>
  );
}
