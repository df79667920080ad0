/** Branches and buds as a table in which every figure can be typed, by keys alone; the selection is the page's own. */
import { type RefObject, useEffect, useRef } from 'react';
import { columns } from './columns.ts';
import { GridLine } from './GridLine.tsx';
import './grid.css';
import { BranchTools } from '../tools/BranchTools.tsx';
import { TickedTools } from './TickedTools.tsx';
import { type BranchGridState, useBranchGrid } from './useBranchGrid.ts';
import { gridWords as words } from './words.ts';

/** A branch that was chosen on the stage, or made, comes into sight; keys that were in the table follow it. */
function useFollowing(
  table: RefObject<HTMLDivElement | null>,
  { selected, place: { column }, typing }: BranchGridState,
) {
  const wasTyping = useRef(false);
  useEffect(() => {
    const row = table.current?.querySelector<HTMLElement>('[role=row][aria-selected="true"]');
    row?.scrollIntoView({ block: 'nearest' });
    const focused = document.activeElement;
    const isInCell = focused?.classList.contains('grid-cell') === true && table.current?.contains(focused);
    // The field that was typed in is gone, and the keys with it.
    const isOver = wasTyping.current && typing === null && focused === document.body;
    if (isInCell === true || isOver) row?.querySelectorAll<HTMLElement>('.grid-cell')[column]?.focus();
    wasTyping.current = typing !== null;
  }, [table, selected, column, typing]);
}

export function BranchGrid() {
  const grid = useBranchGrid();
  const table = useRef<HTMLDivElement>(null);
  useFollowing(table, grid);
  return (
    <div className="branch-grid">
      <p className="quiet small" id="grid-hint">
        {words.hint}
      </p>
      <div className="button-row">
        <button type="button" className="button" onClick={grid.acts.add}>
          {words.add}
        </button>
        <button type="button" className="button" onClick={grid.acts.remove}>
          {words.remove}
        </button>
        <label className="tick">
          <input
            type="checkbox"
            checked={grid.withBuds}
            onChange={(event) => grid.setWithBuds(event.target.checked)}
          />
          {words.showBuds}
        </label>
      </div>
      {grid.current === undefined ? null : <BranchTools axis={grid.current.axis} />}
      {grid.ticked.length > 0 ? <TickedTools ticked={grid.ticked} /> : null}
      <div className="grid-scroll">
        <div
          ref={table}
          role="treegrid"
          tabIndex={-1}
          className="grid-table"
          aria-label={words.table}
          aria-describedby="grid-hint"
          onKeyDown={grid.onKeyDown}
          onPaste={grid.onPaste}
        >
          <Heads units={grid.units} />
          <div role="rowgroup" className="grid-body">
            {grid.rows.map((row, index) => (
              <GridLine key={row.id} row={row} index={index} grid={grid} />
            ))}
          </div>
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
