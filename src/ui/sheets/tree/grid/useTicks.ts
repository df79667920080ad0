/** Which branches of the table are ticked. */
import { useState } from 'react';
import type { GridRow } from './rows.ts';

/** Branches that are ticked, as far as they are still there. */
export function useTicks(rows: readonly GridRow[]) {
  const [ticks, setTicks] = useState<ReadonlySet<string>>(new Set());
  const branches = rows.filter(({ bud }) => bud === null);
  const ticked = branches.filter(({ id }) => ticks.has(id)).map(({ id }) => id);
  const tick = (row: GridRow | undefined) => {
    if (row?.bud !== null) return;
    setTicks((old) => {
      const next = new Set(old);
      if (!next.delete(row.id)) next.add(row.id);
      return next;
    });
  };
  /** All, or none where all were. */
  const tickAll = () =>
    setTicks(new Set(ticked.length === branches.length ? [] : branches.map(({ id }) => id)));
  return { ticked, tick, tickAll };
}
