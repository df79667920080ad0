import { Cancelled, type Running } from './engine.ts';
import type { Job, Progress } from './job.ts';

/** Longest stretch of work before messages (a cancel, say) are let in, milliseconds. */
const sliceMs = 30;

const pause = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

/**
 * Carries a job on the thread at hand, in slices, so that a cancel is heard between them.
 * A cancelled or failed job leaves nothing behind.
 */
export function runJob<Result, Partial>(
  job: Job<Result, Partial>,
  onProgress: (progress: Progress<Partial>) => void = () => {},
): Running<Result> {
  let cancelled = false;
  const work = async (): Promise<Result> => {
    let sliceEnds = performance.now() + sliceMs;
    for (;;) {
      if (cancelled) {
        job.return(undefined as Result);
        throw new Cancelled();
      }
      const step = job.next();
      if (step.done) return step.value;
      onProgress(step.value);
      if (performance.now() >= sliceEnds) {
        await pause();
        sliceEnds = performance.now() + sliceMs;
      }
    }
  };
  return {
    result: work(),
    cancel: () => {
      cancelled = true;
    },
  };
}
