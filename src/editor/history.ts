/** Steps of undo. Files are never changed in place, so a step holds a whole file and shares all that did not change. */
import type { TreeFile } from '../document/treeFile.ts';

export interface Step {
  readonly file: TreeFile;
  /** What led to this file. Empty for the file as it was opened first. */
  readonly said: string;
}

export interface History {
  /** Oldest first. */
  readonly past: readonly Step[];
  readonly present: Step;
  /** What was undone last comes first. */
  readonly future: readonly Step[];
}

/** Steps that can be undone; older ones are forgotten. Our choice: far more than an evening's work. */
export const keptSteps = 500;

export const startHistory = (file: TreeFile): History => ({
  past: [],
  present: { file, said: '' },
  future: [],
});

export function record(history: History, step: Step): History {
  return { past: [...history.past, history.present].slice(-keptSteps), present: step, future: [] };
}

/** One step back; the same history when there is none. */
export function undo({ past, present, future }: History): History {
  const before = past[past.length - 1];
  if (before === undefined) return { past, present, future };
  return { past: past.slice(0, -1), present: before, future: [present, ...future] };
}

/** One step forward again; the same history when there is none. */
export function redo({ past, present, future }: History): History {
  const next = future[0];
  if (next === undefined) return { past, present, future };
  return { past: [...past, present], present: next, future: future.slice(1) };
}
