import { planJob } from '../plan/planJob.ts';
import type { TrialContext } from '../plan/trial.ts';
import type { Engine, Running } from './engine.ts';
import { lightJob } from './lightJob.ts';
import { planInputOf } from './planInput.ts';
import { runJob } from './runJob.ts';
import type { TracedTree } from './tracedTree.ts';
import { trialJob } from './trialJob.ts';

/** Work whose result is a part of another's. */
function part<Whole, Part>(running: Running<Whole>, take: (whole: Whole) => Part): Running<Part> {
  return { result: running.result.then(take), cancel: running.cancel };
}

/** The engine on the thread at hand. It keeps the tree traced last and the plan made last. */
export function createInPlaceEngine(): Engine {
  let traced: TracedTree | null = null;
  let trial: TrialContext | null = null;
  return {
    light(file, options = {}, onProgress) {
      return part(runJob(lightJob(file, options, traced), onProgress), (whole) => {
        traced = whole.traced;
        return whole.answer;
      });
    },
    plan(file, options = {}, onProgress) {
      return part(runJob(planJob(planInputOf(file, options)), onProgress), (whole) => {
        trial = whole.trial;
        return whole.plan;
      });
    },
    tryCuts(cutIds, onProgress) {
      if (trial !== null) return runJob(trialJob(trial, cutIds), onProgress);
      const refusal = new Error('tryCuts: no plan has been made yet');
      return { result: Promise.reject(refusal), cancel: () => {} };
    },
    dispose() {
      traced = null;
      trial = null;
    },
  };
}
