/** One cell of the table: text, and a field in its place while it is changed. */
import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { Choice, Column } from './column.ts';

interface GridCellProps {
  readonly column: Column;
  readonly text: string;
  readonly choices: readonly Choice[] | null;
  /** The one cell of the table that is reached by Tab. */
  readonly isCurrent: boolean;
  /** What the field begins with; null while the cell is not changed. */
  readonly begun: string | null;
  /** Heard with the field. */
  readonly label: string;
  readonly onEnter: () => void;
  readonly onBegin: () => void;
  /** @param by the key that ended it */
  readonly onDone: (text: string, by: 'Enter' | 'Tab' | 'leave') => void;
  readonly onCancel: () => void;
}

export function GridCell(props: GridCellProps) {
  const { column, text, choices, isCurrent, begun, label, onEnter, onBegin, onDone, onCancel } = props;
  return (
    <div
      role="gridcell"
      className={column.isFigure ? 'grid-cell figure' : 'grid-cell'}
      data-column={column.id}
      tabIndex={isCurrent && begun === null ? 0 : -1}
      onFocus={(event) => {
        if (event.target === event.currentTarget) onEnter();
      }}
      onDoubleClick={onBegin}
    >
      {begun === null ? (
        text
      ) : (
        <CellField
          begun={begun}
          label={label}
          choices={choices}
          isFigure={column.isFigure}
          onDone={onDone}
          onCancel={onCancel}
        />
      )}
    </div>
  );
}

type CellFieldProps = Pick<GridCellProps, 'label' | 'choices' | 'onDone' | 'onCancel'> & {
  readonly begun: string;
  readonly isFigure: boolean;
};

function CellField({ begun, label, choices, isFigure, onDone, onCancel }: CellFieldProps) {
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
      end(() => onDone(typed, event.key === 'Tab' ? 'Tab' : 'Enter'));
    } else if (event.key === 'Escape') end(onCancel);
  };
  const shared = {
    ref: field,
    'aria-label': label,
    onKeyDown,
    onBlur: () => end(() => onDone(typed, 'leave')),
  };
  if (choices === null) {
    return (
      <input
        {...shared}
        type="text"
        inputMode={isFigure ? 'decimal' : 'text'}
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
