import type { JobSteps } from '../plan/errand.ts';
import type { Plan } from '../plan/plan.ts';
import { type PlanResult, planJob } from '../plan/planJob.ts';
import { replanJob } from '../plan/replan.ts';
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
import { weatherJob } from './weatherJob.ts';

/** Keeps the value of the call begun last, whichever comes to its end first. */
function keeper<Value>() {
  let value: Value | null = null;
  let from = 0;
  let calls = 0;
  return {
    begin: (): number => ++calls,
    keep(call: number, made: Value): void {
      if (call >= from) [value, from] = [made, call];
    },
    get: (): Value | null => value,
    clear(): void {
      [value, from] = [null, calls];
    },
  };
}

/** Keeps what a job for a plan found, first and last, and hands the first plan on to the asker. */
function keptBy<Result extends PlanResult>(
  last: ReturnType<typeof keeper<PlanResult>>,
  steps: JobSteps<Result>,
): Job<Result, Plan> {
  const call = last.begin();
  return (function* () {
    let step = steps.next();
    while (!step.done) {
      const { first, ...stage } = step.value;
      const told = first as PlanResult | undefined;
      if (told !== undefined) last.keep(call, told);
      step = steps.next(yield told === undefined ? stage : { ...stage, partial: told.plan });
    }
    last.keep(call, step.value);
    return step.value;
  })();
}

const refused = (why: string): Running<never> => ({
  result: Promise.reject(new Error(why)),
  cancel: () => {},
});

/** Jobs under way: each counts until it is settled. */
function jobsOn(tracers: Tracers | null) {
  const underWay = new Set<Running<unknown>>();
  return {
    begin<Whole, Part, Result>(
      job: Job<Whole, Part>,
      onProgress: ((progress: Progress<Part>) => void) | undefined,
      take: (whole: Whole) => Result,
    ): Running<Result> {
      const work = runJob(job, onProgress, tracers);
      underWay.add(work);
      const result = work.result.then(take).finally(() => underWay.delete(work));
      return { result, cancel: work.cancel };
    },
    cancelAll(): void {
      for (const work of underWay) work.cancel();
    },
  };
}

/**
 * The engine on the thread at hand. It keeps the tree traced last and the plan asked for last.
 * @param tracers threads that trace for it, which end with it; null: it traces by itself
 */
export function createInPlaceEngine(tracers: Tracers | null = null): Engine {
  const traced = keeper<TracedTree>();
  const last = keeper<PlanResult>();
  const { begin, cancelAll } = jobsOn(tracers);

  return {
    light(file, options = {}, onProgress) {
      const call = traced.begin();
      return begin(lightJob(file, options, traced.get()), onProgress, (whole) => {
        traced.keep(call, whole.traced);
        return whole.answer;
      });
    },
    plan(file, options = {}, onProgress) {
      const job = keptBy(last, planJob(planInputOf(file, options), options.firstList));
      return begin(job, onProgress, ({ plan }) => plan);
    },
    replan(file, options = {}, onProgress) {
      const before = last.get();
      if (before === null) return refused('replan: no plan has been made yet');
      const job = keptBy(last, replanJob(before.made, planInputOf(file, options), options.firstList));
      return begin(job, onProgress, ({ plan, isApproximate }) => ({ plan, isApproximate }));
    },
    tryCuts(cutIds, onProgress) {
      const context = last.get()?.trial;
      if (context === undefined) return refused('tryCuts: no plan has been made yet');
      return begin(trialJob(context, cutIds), onProgress, (answer) => answer);
    },
    look(file, question, options = {}, onProgress) {
      return begin(
        lookJob(file, question, options),
        onProgress,
        (answer) => answer as LookAnswers[typeof question.ask],
      );
    },
    takeWeather: (file, text) => begin(weatherJob(file, text), undefined, (taken) => taken),
    dispose() {
      cancelAll();
      traced.clear();
      last.clear();
      tracers?.dispose();
    },
  };
}
