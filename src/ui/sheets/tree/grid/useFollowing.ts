/** A branch that was chosen on the stage, or made, comes into sight; keys that were in the table follow it. */
import { type RefObject, useEffect, useRef } from 'react';
import type { BranchGridState } from './useBranchGrid.ts';

/** Whether the last thing that was focused or pressed is within; a field that is gone since still counts. */
function useWasWithin(whole: RefObject<HTMLElement | null>): RefObject<boolean> {
  const wasWithin = useRef(false);
  useEffect(() => {
    const note = ({ target }: Event) => {
      wasWithin.current = target instanceof Node && whole.current?.contains(target) === true;
    };
    document.addEventListener('focusin', note);
    document.addEventListener('pointerdown', note);
    return () => {
      document.removeEventListener('focusin', note);
      document.removeEventListener('pointerdown', note);
    };
  }, [whole]);
  return wasWithin;
}

/** @param whole the table with its buttons */
export function useFollowing(
  whole: RefObject<HTMLElement | null>,
  table: RefObject<HTMLElement | null>,
  { selected, place: { column }, typing }: BranchGridState,
): void {
  const wasWithin = useWasWithin(whole);
  useEffect(() => {
    const row = table.current?.querySelector<HTMLElement>('[role=row][aria-selected="true"]');
    row?.scrollIntoView({ block: 'nearest' });
    const focused = document.activeElement;
    const isInCell = focused?.classList.contains('grid-cell') === true && table.current?.contains(focused);
    // The field that was typed in, or the form of the branch that was split, is gone, and the keys with it.
    const isLost = wasWithin.current && typing === null && focused === document.body;
    if (isInCell === true || isLost) row?.querySelectorAll<HTMLElement>('.grid-cell')[column]?.focus();
  }, [table, wasWithin, selected, column, typing]);
}
