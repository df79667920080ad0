import type { Engine, Running } from './engine.ts';
import { lightJob, type TracedTree } from './lightJob.ts';
import { runJob } from './runJob.ts';

/** Work whose result is a part of another's. */
function part<Whole, Part>(running: Running<Whole>, take: (whole: Whole) => Part): Running<Part> {
  return { result: running.result.then(take), cancel: running.cancel };
}

/** The engine on the thread at hand. It keeps the tree traced last and the plan made last. */
export function createInPlaceEngine(): Engine {
  let traced: TracedTree | null = null;
  return {
    light(file, options = {}, onProgress) {
      return part(runJob(lightJob(file, options, traced), onProgress), (whole) => {
        traced = whole.traced;
        return whole.answer;
      });
    },
    plan() {
      return { result: Promise.reject(new Error('plan: not joined up')), cancel: () => {} };
    },
    tryCuts() {
      return { result: Promise.reject(new Error('tryCuts: no plan has been made yet')), cancel: () => {} };
    },
    dispose() {
      traced = null;
    },
  };
}
