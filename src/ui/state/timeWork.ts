/** The light of single months and hours, weighed from the rays already traced when it is asked for. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Engine, LightAnswer, LightOptions } from '../../engine/engine.ts';
import type { Period } from '../../season/site.ts';
import { monthPeriod } from './monthPeriod.ts';

/** A part of the season. */
export type ShownTime =
  /** 1 to 12. */
  | { readonly by: 'month'; readonly month: number }
  /** The hour of every day that begins then, 0 to 23: the sun stands highest at 12. */
  | { readonly by: 'hour'; readonly solarHour: number };

export interface WeighedTimes {
  /** The answer over the whole season that they belong to; with another they are out of date. */
  readonly of: LightAnswer | null;
  readonly times: ReadonlyMap<string, LightAnswer>;
}

export interface TimeWork {
  readonly store: StoreApi<WeighedTimes>;
  /** Weighs that time, unless it is there or on its way. @param answer of this tree, over its whole season */
  weigh(file: TreeFile, answer: LightAnswer, time: ShownTime): void;
}

const keyOf = (time: ShownTime): string => JSON.stringify(time);

/** The weighed light of that time; null while it is not there. */
export const weighedAt = (
  { of, times }: WeighedTimes,
  answer: LightAnswer | null,
  time: ShownTime | null,
): LightAnswer | null => (time === null || of !== answer ? null : (times.get(keyOf(time)) ?? null));

function optionsOf(time: ShownTime, season: Period): LightOptions | null {
  if (time.by === 'hour') return { solarHour: time.solarHour };
  const period = monthPeriod(season, time.month);
  return period === null ? null : { period };
}

export function createTimeWork(engine: Engine): TimeWork {
  const store = createStore<WeighedTimes>(() => ({ of: null, times: new Map() }));
  const underWay = new Map<string, LightAnswer>();
  const follow = async (file: TreeFile, answer: LightAnswer, time: ShownTime, options: LightOptions) => {
    const key = keyOf(time);
    underWay.set(key, answer);
    try {
      const weighed = await engine.light(file, options).result;
      const before = store.getState();
      const times = before.of === answer ? before.times : new Map<string, LightAnswer>();
      store.setState({ of: answer, times: new Map(times).set(key, weighed) });
    } catch {
      // The season's own figures for that time stay on the page; only what is finer is missing.
    }
    if (underWay.get(key) === answer) underWay.delete(key);
  };
  return {
    store,
    weigh(file, answer, time) {
      const options = optionsOf(time, answer.report.period);
      const isThere = weighedAt(store.getState(), answer, time) !== null;
      if (options === null || isThere || underWay.get(keyOf(time)) === answer) return;
      void follow(file, answer, time, options);
    },
  };
}
