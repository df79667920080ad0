/**
 * Work that a job may have done elsewhere. The job hands out an errand with a step of its progress; whoever carries the
 * job may answer with what was fetched, traced on another thread, say. A carrier that knows nothing of errands answers
 * nothing, and the job does the work itself: the same numbers either way, since a wave depends on its task alone.
 */
import type { LeafWave } from '../light/leafLedger.ts';
import type { Wave } from '../light/ledger.ts';
import { type TracedWave, type WaveTask, waveSteps } from './canopyWave.ts';
import { type WorldFindings, type WorldTask, worldSteps } from './worlds/judgeWorld.ts';

/** What can be done elsewhere, as plain data. */
export type Task = WaveTask | WorldTask;

/** What comes of it. */
export type Found<Any extends Task> = Any extends { readonly at: infer At extends WaveTask['at'] }
  ? TracedWave<At>
  : WorldFindings;

/** Yields the share done of it, 0 to 1. */
export const taskSteps = (task: Task): Generator<number, Wave | LeafWave | WorldFindings, void> =>
  task.at === 'world' ? worldSteps(task) : waveSteps(task);

export interface Errand {
  readonly task: Task;
  /** Tasks that will most likely be errands next: they may be begun already. */
  readonly ahead: readonly Task[];
  /** How far the job is when the errand is done, 0 to 1. */
  readonly doneAfter: number;
}

/** What a carrier answers to a step of the job. */
// biome-ignore lint/suspicious/noConfusingVoidType: carriers that know no errands call next() with nothing.
export type Fetched = Wave | LeafWave | WorldFindings | void;

/** Progress of a job, which may carry an errand. */
export interface Stage {
  /** 0 to 1. */
  readonly done: number;
  /** What is being done, in plain words. */
  readonly doing: string;
  readonly errand?: Errand;
  /** A usable answer before the last one: of a plan, what `PlanResult` is. */
  readonly first?: unknown;
}

/** The steps of a job that the plan room knows; the engine's have coarse answers too. */
export type JobSteps<Result> = Generator<Stage, Result, Fetched>;

/** A task done elsewhere, or here when nobody takes the errand. */
export function* fetchTask<Any extends Task>(
  task: Any,
  ahead: readonly Task[],
  { doing, from, to }: { readonly doing: string; readonly from: number; readonly to: number },
): JobSteps<Found<Any>> {
  const answer = yield { done: from, doing, errand: { task, ahead, doneAfter: to } };
  if (answer !== undefined) return answer as Found<Any>;
  const steps = taskSteps(task);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value as Found<Any>;
    yield { done: from + (to - from) * step.value, doing };
  }
}

/** A part of the work, its progress from one share of the whole to another. */
export function* within<Result>(steps: JobSteps<Result>, from: number, to: number): JobSteps<Result> {
  const share = (done: number): number => from + (to - from) * done;
  let step = steps.next();
  while (!step.done) {
    const { done, errand, ...stage } = step.value;
    const sent = errand && { errand: { ...errand, doneAfter: share(errand.doneAfter) } };
    step = steps.next(yield { ...stage, done: share(done), ...sent });
  }
  return step.value;
}
