/**
 * Work that a job may have done elsewhere. The job hands out an errand with a step of its progress; whoever carries the
 * job may answer with what was fetched, traced on another thread, say. A carrier that knows nothing of errands answers
 * nothing, and the job does the work itself: the same numbers either way, since a wave depends on its task alone.
 */
import type { LeafWave } from '../light/leafLedger.ts';
import type { Wave } from '../light/ledger.ts';
import { type TracedWave, type WaveTask, waveSteps } from './canopyWave.ts';

export interface Errand {
  readonly task: WaveTask;
  /** Tasks that will most likely be errands next: they may be begun already. */
  readonly ahead: readonly WaveTask[];
  /** How far the job is when the errand is done, 0 to 1. */
  readonly doneAfter: number;
}

/** What a carrier answers to a step of the job. */
// biome-ignore lint/suspicious/noConfusingVoidType: carriers that know no errands call next() with nothing.
export type Fetched = Wave | LeafWave | void;

/** Progress of a job, which may carry an errand. */
export interface Stage {
  /** 0 to 1. */
  readonly done: number;
  /** What is being done, in plain words. */
  readonly doing: string;
  readonly errand?: Errand;
}

/** The steps of a job that the plan room knows; the engine's have coarse answers too. */
export type JobSteps<Result> = Generator<Stage, Result, Fetched>;

/** A wave traced elsewhere, or here when nobody takes the errand. */
export function* fetchWave<At extends WaveTask['at']>(
  task: WaveTask & { readonly at: At },
  ahead: readonly WaveTask[],
  { doing, from, to }: { readonly doing: string; readonly from: number; readonly to: number },
): JobSteps<TracedWave<At>> {
  const answer = yield { done: from, doing, errand: { task, ahead, doneAfter: to } };
  if (answer !== undefined) return answer as TracedWave<At>;
  const steps = waveSteps(task);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
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
