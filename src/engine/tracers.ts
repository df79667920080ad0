/** What carries errands of jobs to other threads. */

import type { Fetched, Task } from '../plan/errand.ts';

export interface Tracing {
  /**
   * The wave; undefined when no thread is left to trace it. Rejects when the work itself fails, when it broke down two
   * threads, and with `Cancelled` after `cancel`.
   */
  readonly result: Promise<Fetched>;
  cancel(): void;
}

export interface Tracers {
  /** @param onShare told the share of the task that is done, 0 to 1 */
  trace(task: Task, onShare: (share: number) => void): Tracing;
  dispose(): void;
}
