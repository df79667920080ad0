import type { Progress } from './job.ts';

/** Passes on how far a trace is, and returns what it returns. */
export function* progressOf<Result, Partial>(
  steps: Generator<number, Result, void>,
  progress: (done: number) => Progress<Partial>,
): Generator<Progress<Partial>, Result, unknown> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield progress(step.value);
  }
}
