/** The light of the open tree: traced in the background after every change, coarse first. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { TreeFile } from '../../document/treeFile.ts';
import { Cancelled, type Engine, type LightAnswer, type Running } from '../../engine/engine.ts';
import type { Progress } from '../../engine/job.ts';
import { monthPeriod } from './monthPeriod.ts';

export interface LightState {
  /** The tree that the answer is for; when it is not the open one, the answer is out of date. */
  readonly file: TreeFile | null;
  readonly answer: LightAnswer | null;
  /** Single months, weighed from the same rays when they are asked for. */
  readonly months: ReadonlyMap<number, LightAnswer>;
  /** Null when nothing is under way. */
  readonly progress: Progress | null;
  /** Why there is no newer answer: stopped by the grower, or what went wrong. */
  readonly stopped:
    | { readonly why: 'cancelled' }
    | { readonly why: 'failed'; readonly message: string }
    | null;
}

export interface LightWork {
  readonly store: StoreApi<LightState>;
  /** Traces this tree once `delayMs` have passed without another call. */
  trace(file: TreeFile, delayMs?: number): void;
  cancel(): void;
  /** Weighs the traced rays for one month of the season, 1 to 12. */
  weigh(month: number): void;
}

const first: LightState = { file: null, answer: null, months: new Map(), progress: null, stopped: null };

export const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

export function createLightWork(engine: Engine): LightWork {
  const store = createStore<LightState>(() => first);
  let timer: ReturnType<typeof setTimeout> | undefined;
  let running: Running<LightAnswer> | null = null;

  const stop = () => {
    clearTimeout(timer);
    running?.cancel();
    running = null;
  };
  const start = (file: TreeFile) => {
    const mine = engine.light(file, {}, (progress) => {
      if (running !== mine) return;
      const coarse =
        progress.partial === undefined ? {} : { file, answer: progress.partial, months: new Map() };
      store.setState({ progress, ...coarse });
    });
    running = mine;
    void follow(mine, file);
  };
  const follow = async (mine: Running<LightAnswer>, file: TreeFile) => {
    try {
      const answer = await mine.result;
      if (running === mine)
        store.setState({ file, answer, months: new Map(), progress: null, stopped: null });
    } catch (error) {
      if (running !== mine || error instanceof Cancelled) return;
      store.setState({ progress: null, stopped: { why: 'failed', message: messageOf(error) } });
    }
  };

  return {
    store,
    trace(file, delayMs = 0) {
      stop();
      store.setState({ progress: { done: 0, doing: 'Waiting to begin' }, stopped: null });
      timer = setTimeout(() => start(file), delayMs);
    },
    cancel() {
      stop();
      store.setState({ progress: null, stopped: { why: 'cancelled' } });
    },
    weigh: (month) => void weigh(engine, store, month),
  };
}

async function weigh(engine: Engine, store: StoreApi<LightState>, month: number): Promise<void> {
  const { file, answer, months } = store.getState();
  const period = answer === null ? null : monthPeriod(answer.report.period, month);
  if (file === null || period === null || months.has(month)) return;
  try {
    const weighed = await engine.light(file, { period }).result;
    const now = store.getState();
    if (now.answer === answer) store.setState({ months: new Map(now.months).set(month, weighed) });
  } catch {
    // The season's own figures for the month stay on the page; only their doubt is missing.
  }
}
