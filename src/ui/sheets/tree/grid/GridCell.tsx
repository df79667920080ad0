/** One cell of the table: text, and a field in its place while it is changed. */
import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { useFile } from '../../../state/workbench.ts';
import type { Column } from './column.ts';
import type { GridRow } from './rows.ts';
import type { EndedBy } from './useTyping.ts';

interface GridCellProps {
  readonly column: Column;
  readonly row: GridRow;
  readonly text: string;
  /** What the text begins with, heard but not seen. */
  readonly lead: string;
  /** The row has no such thing, or it cannot be changed. */
  readonly isFixed: boolean;
  /** The one cell of the table that is reached by Tab. */
  readonly isCurrent: boolean;
  /** What the field begins with; null while the cell is not changed. */
  readonly begun: string | null;
  readonly onEnter: () => void;
  readonly onBegin: () => void;
  /** @param by the key that ended it */
  readonly onDone: (text: string, by: EndedBy) => void;
  readonly onCancel: () => void;
}

export function GridCell(props: GridCellProps) {
  const { column, row, text, lead, isFixed, isCurrent, begun } = props;
  const { onEnter, onBegin, onDone, onCancel } = props;
  const wasFocused = useRef(false);
  const isEstimate = column.isEstimate?.(row) === true;
  return (
    <div
      role="gridcell"
      {...(isFixed ? { 'aria-readonly': true } : {})}
      className={`grid-cell${column.isFigure ? ' figure' : ''}${isEstimate ? ' is-estimate' : ''}`}
      data-column={column.id}
      tabIndex={isCurrent && begun === null ? 0 : -1}
      onFocus={(event) => {
        if (event.target === event.currentTarget) onEnter();
      }}
      onPointerDown={(event) => {
        wasFocused.current = document.activeElement === event.currentTarget;
      }}
      onPointerUp={() => {
        // A tap goes to the cell, the next one into it: no double tap is needed.
        if (wasFocused.current) onBegin();
      }}
    >
      {begun === null ? (
        <>
          {lead === '' ? null : <span className="unseen">{lead}</span>}
          {text.slice(lead.length)}
        </>
      ) : (
        <CellField column={column} row={row} begun={begun} onDone={onDone} onCancel={onCancel} />
      )}
    </div>
  );
}

type CellFieldProps = Pick<GridCellProps, 'column' | 'row' | 'onDone' | 'onCancel'> & {
  readonly begun: string;
};

function CellField({ column, row, begun, onDone, onCancel }: CellFieldProps) {
  const choices = column.choices(row, useFile());
  const [typed, setTyped] = useState(begun);
  const field = useRef<HTMLInputElement & HTMLSelectElement>(null);
  const isOver = useRef(false);
  useEffect(() => field.current?.focus(), []);
  const end = (act: () => void) => {
    if (isOver.current) return;
    isOver.current = true;
    act();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    // Keys of the page and of the table wait until the entry is finished.
    event.stopPropagation();
    if (event.key === 'Enter' || event.key === 'Tab') {
      event.preventDefault();
      const by = event.key === 'Enter' ? 'Enter' : event.shiftKey ? 'Shift+Tab' : 'Tab';
      end(() => onDone(typed, by));
    } else if (event.key === 'Escape') end(onCancel);
  };
  const shared = {
    ref: field,
    'aria-label': `${column.head}, ${row.axis.name}`,
    onKeyDown,
    onBlur: () => end(() => onDone(typed, 'leave')),
  };
  if (choices === null) {
    return (
      <input
        {...shared}
        type="text"
        inputMode={column.isFigure ? 'decimal' : 'text'}
        autoComplete="off"
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
    );
  }
  const now = choices.find((choice) => choice.text === typed)?.text ?? begun;
  return (
    <select {...shared} value={now} onChange={(event) => setTyped(event.target.value)}>
      {choices.map((choice) => (
        <option key={choice.value}>{choice.text}</option>
      ))}
    </select>
  );
}
