import { planJob } from '../plan/planJob.ts';
import type { TrialContext } from '../plan/trial.ts';
import type { Engine, Running } from './engine.ts';
import type { Job, Progress } from './job.ts';
import { lightJob } from './lightJob.ts';
import type { LookAnswers } from './look.ts';
import { lookJob } from './lookJob.ts';
import { planInputOf } from './planInput.ts';
import { runJob } from './runJob.ts';
import type { TracedTree } from './tracedTree.ts';
import type { Tracers } from './tracers.ts';
import { trialJob } from './trialJob.ts';

/** Keeps the value of the call begun last, whichever comes to its end first. */
function keeper<Value>() {
  let value: Value | null = null;
  let from = 0;
  let calls = 0;
  return {
    begin: (): number => ++calls,
    keep(call: number, made: Value): void {
      if (call > from) [value, from] = [made, call];
    },
    get: (): Value | null => value,
    clear(): void {
      [value, from] = [null, calls];
    },
  };
}

/**
 * The engine on the thread at hand. It keeps the tree traced last and the plan asked for last.
 * @param tracers threads that trace for it, which end with it; null: it traces by itself
 */
export function createInPlaceEngine(tracers: Tracers | null = null): Engine {
  const traced = keeper<TracedTree>();
  const trial = keeper<TrialContext>();
  const underWay = new Set<Running<unknown>>();

  /** Begins a job; it counts as under way until it is settled. */
  function begin<Whole, Part, Result>(
    job: Job<Whole, Part>,
    onProgress: ((progress: Progress<Part>) => void) | undefined,
    take: (whole: Whole) => Result,
  ): Running<Result> {
    const work = runJob(job, onProgress, tracers);
    underWay.add(work);
    const result = work.result.then(take).finally(() => underWay.delete(work));
    return { result, cancel: work.cancel };
  }

  return {
    light(file, options = {}, onProgress) {
      const call = traced.begin();
      return begin(lightJob(file, options, traced.get()), onProgress, (whole) => {
        traced.keep(call, whole.traced);
        return whole.answer;
      });
    },
    plan(file, options = {}, onProgress) {
      const call = trial.begin();
      return begin(planJob(planInputOf(file, options)), onProgress, (whole) => {
        trial.keep(call, whole.trial);
        return whole.plan;
      });
    },
    tryCuts(cutIds, onProgress) {
      const context = trial.get();
      if (context !== null) return begin(trialJob(context, cutIds), onProgress, (answer) => answer);
      const refusal = new Error('tryCuts: no plan has been made yet');
      return { result: Promise.reject(refusal), cancel: () => {} };
    },
    look(file, question, options = {}, onProgress) {
      return begin(
        lookJob(file, question, options),
        onProgress,
        (answer) => answer as LookAnswers[typeof question.ask],
      );
    },
    dispose() {
      for (const work of underWay) work.cancel();
      traced.clear();
      trial.clear();
      tracers?.dispose();
    },
  };
}
