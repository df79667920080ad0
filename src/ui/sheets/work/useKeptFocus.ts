/** Keeps the place of one who works by keys: a row that leaves the list takes the focus along, which then goes to the list's head. */
import { type FocusEvent, useEffect, useRef } from 'react';
import type { Plan } from '../../../plan/plan.ts';

export function useKeptFocus(plan: Plan) {
  const head = useRef<HTMLHeadingElement>(null);
  const isWithin = useRef(false);
  useEffect(() => {
    const isLost = document.activeElement === null || document.activeElement === document.body;
    if (plan.cuts.length > 0 && isWithin.current && isLost) head.current?.focus();
  }, [plan]);
  const list = {
    onFocus: () => {
      isWithin.current = true;
    },
    onBlur: ({ relatedTarget, currentTarget }: FocusEvent<HTMLElement>) => {
      // Without a next target the row itself went away, or the window did.
      if (relatedTarget !== null && !currentTarget.contains(relatedTarget)) isWithin.current = false;
    },
  };
  return { head, list };
}
