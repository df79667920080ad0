/** An engine whose answers the test gives by hand. */
import { withEpw } from '../../../src/document/withEpw.ts';
import {
  Cancelled,
  type Engine,
  type LightAnswer,
  type LightOptions,
  type Replanned,
  type Running,
  type Trial,
} from '../../../src/engine/engine.ts';
import type { Progress } from '../../../src/engine/job.ts';
import type { LookAnswers } from '../../../src/engine/look.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import type { Score } from '../../../src/plan/score.ts';

interface Asked<Result> {
  readonly options: unknown;
  readonly onProgress: (progress: Progress<never>) => void;
  readonly isCancelled: () => boolean;
  answer(result: Result): Promise<void>;
  fail(message: string): Promise<void>;
}

function running<Result>(list: Asked<Result>[], options: unknown, onProgress: unknown): Running<Result> {
  let isCancelled = false;
  const { promise, resolve, reject } = deferred<Result>();
  const settle = async () => {
    await promise.catch(() => {});
    await Promise.resolve();
  };
  list.push({
    options,
    onProgress: (onProgress ?? (() => {})) as (progress: Progress<never>) => void,
    isCancelled: () => isCancelled,
    answer: (result) => {
      resolve(result);
      return settle();
    },
    fail: (message) => {
      reject(new Error(message));
      return settle();
    },
  });
  return {
    result: promise,
    cancel: () => {
      isCancelled = true;
      reject(new Cancelled());
    },
  };
}

function deferred<T>() {
  let resolve: (value: T) => void = () => {};
  let reject: (error: Error) => void = () => {};
  const promise = new Promise<T>((yes, no) => {
    resolve = yes;
    reject = no;
  });
  return { promise, resolve, reject };
}

export function standInEngine() {
  const lights: Asked<LightAnswer>[] = [];
  const plans: Asked<Plan>[] = [];
  const replans: Asked<Replanned>[] = [];
  const trials: Asked<Trial>[] = [];
  const looks: Asked<LookAnswers[keyof LookAnswers]>[] = [];
  const engine: Engine = {
    light: (_file, options?: LightOptions, onProgress?) => running(lights, options, onProgress),
    plan: (_file, options, onProgress) => running(plans, options, onProgress),
    replan: (_file, options, onProgress) => running(replans, options, onProgress),
    tryCuts: (cutIds) => running(trials, cutIds, undefined),
    look: (_file, question, _options, onProgress) => running(looks as Asked<never>[], question, onProgress),
    takeWeather: (file, text) => ({ result: Promise.resolve(withEpw(file, text)), cancel: () => {} }),
    dispose: () => {},
  };
  return { engine, lights, plans, replans, trials, looks };
}

const threshold = (share: number) => ({ share, source: 'made up', isSet: false });

export const lightAnswer = (seed: number): LightAnswer => ({
  report: {
    format: 'boughlight-light',
    version: 1,
    period: { from: '2030-05-03', to: '2030-10-11' },
    weather: 'normal',
    sky: 'uniform',
    solarHour: null,
    energy: { basis: 'sunshine', source: 'measured' },
    leafSeason: { from: '2030-04-20', to: '2030-10-29', daysOutside: 0 },
    parFactor: { molPerMJ: 2.018, low: 1.98, high: 2.3 },
    openSkyParMolM2Day: 31.7,
    dayLengthH: 14.6,
    thresholds: { deepShade: threshold(0.13), fruitingLight: threshold(0.26), saturation: threshold(0.44) },
    seed,
    rays: 1213,
    shoots: [],
  },
  nodes: [],
  leaves: [],
});

export const score = (ripeFigs: number): Score => ({
  ripeFigs,
  figsSet: 1.2 * ripeFigs,
  firstCropFigs: 1.3,
  fruitingWoodM: 2.9,
  shootCount: 17,
  deepShadeCount: 3,
  leafAreaM2: 4.1,
  meanLight: 0.37,
});
