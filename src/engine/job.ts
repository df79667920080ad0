/**
 * One job interface. A job is a generator: it yields progress and returns its result, so that whoever
 * carries it (in place, browser worker, Node worker) decides when it runs, shows how far it is and
 * stops it by not asking for more. Jobs know no clock and no thread. A step may hold an errand, which a carrier may have
 * done elsewhere; see `plan/errand.ts`.
 */
import type { Fetched, Stage } from '../plan/errand.ts';

export interface Progress<Partial = unknown> {
  /** 0 to 1. */
  readonly done: number;
  /** What is being done, in plain words. */
  readonly doing: string;
  /** A usable coarse answer, when there is one. */
  readonly partial?: Partial;
}

export type Job<Result, Partial = unknown> = Generator<Stage & Progress<Partial>, Result, Fetched>;

/** Runs a job to its end on the spot. */
export function finishJob<Result>(job: Job<Result>): Result {
  for (;;) {
    const step = job.next();
    if (step.done) return step.value;
  }
}
