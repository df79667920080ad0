import type { Errand, Fetched, Task } from '../plan/errand.ts';
import { breath } from './breath.ts';
import { Cancelled, type Running } from './engine.ts';
import type { Job, Progress } from './job.ts';
import type { Tracers, Tracing } from './tracers.ts';

/** Longest stretch of work before messages (a cancel, say) are let in, milliseconds. */
const sliceMs = 12;
/** Progress is told this often; coarse answers are never held back. */
const tellEveryMs = 40;

type Tell = (share: number) => void;

/** The errands of one job on other threads. */
class Errands {
  private readonly underWay = new Map<Task, Tracing>();
  private readonly tracers: Tracers;
  private awaited: Task | null = null;
  private tell: Tell = () => {};

  constructor(tracers: Tracers) {
    this.tracers = tracers;
  }

  async fetch({ task, ahead }: Errand, tell: Tell): Promise<Fetched> {
    this.awaited = task;
    this.tell = tell;
    const { result } = this.begin(task);
    for (const later of ahead) this.begin(later);
    const fetched = await result;
    this.underWay.delete(task);
    return fetched;
  }

  private begin(task: Task): Tracing {
    const known = this.underWay.get(task);
    if (known !== undefined) return known;
    const tracing = this.tracers.trace(task, (share) => {
      if (this.awaited === task) this.tell(share);
    });
    // Whoever fetches it hears of its failure; one begun ahead may never be fetched.
    tracing.result.catch(() => {});
    this.underWay.set(task, tracing);
    return tracing;
  }

  cancel(): void {
    this.awaited = null;
    for (const tracing of this.underWay.values()) tracing.cancel();
    this.underWay.clear();
  }
}

/** Tells the first progress, every coarse answer, and the rest now and then. */
function teller<Partial>(onProgress: (progress: Progress<Partial>) => void) {
  let nextMs = Number.NEGATIVE_INFINITY;
  return (progress: Progress<Partial>): void => {
    const nowMs = performance.now();
    if (progress.partial === undefined && nowMs < nextMs) return;
    nextMs = nowMs + tellEveryMs;
    onProgress(progress);
  };
}

async function carry<Result, Partial>(
  job: Job<Result, Partial>,
  tell: (progress: Progress<Partial>) => void,
  errands: Errands | null,
  stopped: { readonly now: boolean; readonly promise: Promise<never> },
): Promise<Result> {
  let sliceEndsMs = performance.now() + sliceMs;
  let fetched: Fetched = undefined;
  for (;;) {
    if (stopped.now) throw new Cancelled();
    const step = job.next(fetched);
    fetched = undefined;
    if (step.done) return step.value;
    const { errand, ...progress } = step.value;
    tell(progress);
    if (errands !== null && errand !== undefined) {
      const { done, doing } = progress;
      const onShare = (share: number) => tell({ done: done + share * (errand.doneAfter - done), doing });
      fetched = await Promise.race([errands.fetch(errand, onShare), stopped.promise]);
    } else if (performance.now() >= sliceEndsMs) {
      await breath();
    } else continue;
    sliceEndsMs = performance.now() + sliceMs;
  }
}

/**
 * Carries a job on the thread at hand, in slices, so that a cancel is heard between them; its errands go to the
 * tracers, where there are any. A cancelled or failed job leaves nothing behind.
 */
export function runJob<Result, Partial>(
  job: Job<Result, Partial>,
  onProgress: (progress: Progress<Partial>) => void = () => {},
  tracers: Tracers | null = null,
): Running<Result> {
  const errands = tracers === null ? null : new Errands(tracers);
  let reject: (reason: Error) => void = () => {};
  const promise = new Promise<never>((_, no) => {
    reject = no;
  });
  promise.catch(() => {});
  const stopped = { now: false, promise };
  const result = carry(job, teller(onProgress), errands, stopped).finally(() => {
    job.return(undefined as Result);
    errands?.cancel();
  });
  return {
    result,
    cancel: () => {
      stopped.now = true;
      reject(new Cancelled());
    },
  };
}
