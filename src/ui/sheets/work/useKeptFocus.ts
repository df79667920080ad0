/**
 * Keeps the place of one who works by keys when the list changes: the focus follows its cut to where that is now; with a cut that leaves
 * the list it goes to the list's head.
 */
import { type FocusEvent, useEffect, useRef } from 'react';
import type { Plan } from '../../../plan/plan.ts';

/** What had the focus: a control of a cut. */
interface Held {
  readonly cutId: string | null;
  readonly control: string;
}

export function useKeptFocus(plan: Plan) {
  const head = useRef<HTMLHeadingElement>(null);
  const held = useRef<Held | null>(null);
  useEffect(() => {
    const isLost = document.activeElement === null || document.activeElement === document.body;
    if (plan.cuts.length === 0 || held.current === null || !isLost) return;
    const { cutId, control } = held.current;
    const rows = head.current?.closest('section')?.querySelectorAll<HTMLElement>('[data-id]') ?? [];
    const row = [...rows].find((one) => one.dataset['id'] === cutId);
    (row?.querySelector<HTMLElement>(control) ?? head.current)?.focus();
  }, [plan]);
  const list = {
    onFocus: ({ target }: FocusEvent<HTMLElement>) => {
      const row = target.closest<HTMLElement>('[data-id]');
      const control = target.matches('input') ? 'input' : '.cut-open';
      held.current = { cutId: row?.dataset['id'] ?? null, control };
    },
    onBlur: ({ relatedTarget, currentTarget }: FocusEvent<HTMLElement>) => {
      // Without a next target the row itself went away, or the window did.
      if (relatedTarget !== null && !currentTarget.contains(relatedTarget)) held.current = null;
    },
  };
  return { head, list };
}
