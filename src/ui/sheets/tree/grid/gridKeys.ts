/** The keys of the table of branches. */
import type { KeyboardEvent } from 'react';

export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

export interface GridActs {
  readonly go: (to: GridPlace, table: Element) => void;
  /** @param first what is typed already; null: the cell's own text */
  readonly begin: (first: string | null) => void;
  readonly tick: () => void;
  /** All branches, or none where all were. */
  readonly tickAll: () => void;
  readonly add: () => void;
  readonly remove: () => void;
  /** What else can be done with the branch. */
  readonly more: () => void;
}

const steps: Readonly<Record<string, readonly [down: number, right: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
  PageUp: [-10, 0],
  PageDown: [10, 0],
};

const within = (n: number, count: number): number => Math.min(count - 1, Math.max(0, n));

/** Where a key leads in a table of that size; null when it leads nowhere. */
export function placeAfter(
  key: string,
  isCtrl: boolean,
  { row, column }: GridPlace,
  rows: number,
  columns: number,
): GridPlace | null {
  const step = steps[key];
  if (step !== undefined)
    return { row: within(row + step[0], rows), column: within(column + step[1], columns) };
  if (key === 'Home') return { row: isCtrl ? 0 : row, column: 0 };
  if (key === 'End') return { row: isCtrl ? rows - 1 : row, column: columns - 1 };
  return null;
}

export function gridKeys(place: GridPlace, rows: number, columns: number, acts: GridActs) {
  const acting: Readonly<Record<string, () => void>> = {
    Enter: () => acts.begin(null),
    F2: () => acts.begin(null),
    ' ': acts.tick,
    Insert: acts.add,
    Delete: acts.remove,
    F9: acts.more,
    'Ctrl+a': acts.tickAll,
  };
  return (event: KeyboardEvent) => {
    if (event.altKey || event.metaKey) return;
    const to = placeAfter(event.key, event.ctrlKey, place, rows, columns);
    const act = acting[event.ctrlKey ? `Ctrl+${event.key}` : event.key];
    const isTyped = event.key.length === 1 && !event.ctrlKey && event.key !== ' ';
    if (to === null && act === undefined && !isTyped) return;
    event.preventDefault();
    event.stopPropagation();
    if (to !== null) acts.go(to, event.currentTarget);
    else if (act !== undefined) act();
    else acts.begin(event.key);
  };
}
