/** The light of the open tree: traced in the background after every change, coarse first. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { TreeFile } from '../../document/treeFile.ts';
import { Cancelled, type Engine, type LightAnswer, type Running } from '../../engine/engine.ts';
import type { Progress } from '../../engine/job.ts';

export interface LightState {
  /** The tree that the answer is for; when it is not the open one, the answer is out of date. */
  readonly file: TreeFile | null;
  readonly answer: LightAnswer | null;
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
  /**
   * Traces this tree, or the latest asked for within `delayMs`. A trace of the same tree as it was before gives way, but
   * not before its first picture is there: so the light follows a branch while it is pulled, a little behind.
   */
  trace(file: TreeFile, delayMs?: number): void;
  cancel(): void;
}

const first: LightState = { file: null, answer: null, progress: null, stopped: null };

export const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** A trace that was begun; `hasPicture` once some answer of it was shown. */
interface Begun {
  readonly file: TreeFile;
  readonly work: Running<LightAnswer>;
  hasPicture: boolean;
}

/** The tracing of one tree after the other: the latest asked for is next, whatever came between is left out. */
class Traces {
  private begun: Begun | null = null;
  private next: TreeFile | null = null;
  private readonly engine: Engine;
  private readonly store: StoreApi<LightState>;

  constructor(engine: Engine, store: StoreApi<LightState>) {
    this.engine = engine;
    this.store = store;
  }

  stop(): void {
    this.begun?.work.cancel();
    this.begun = null;
    this.next = null;
  }

  ask(file: TreeFile): void {
    const { begun } = this;
    if (begun !== null && !begun.hasPicture && begun.file.id === file.id) this.next = file;
    else this.begin(file);
  }

  private begin(file: TreeFile): void {
    this.stop();
    const work = this.engine.light(file, {}, (progress) => {
      if (this.begun === mine) this.show(mine, progress);
    });
    const mine: Begun = { file, work, hasPicture: false };
    this.begun = mine;
    void this.follow(mine);
  }

  private show(begun: Begun, { partial, ...progress }: Progress<LightAnswer>): void {
    const { file } = begun;
    const coarse = partial === undefined ? {} : { file, answer: partial };
    this.store.setState({ progress, ...coarse });
    if (partial === undefined) return;
    begun.hasPicture = true;
    this.goOn();
  }

  private async follow(begun: Begun): Promise<void> {
    const { file, work } = begun;
    try {
      const answer = await work.result;
      if (this.begun !== begun) return;
      const progress = this.next === null ? null : this.store.getState().progress;
      this.store.setState({ file, answer, progress, stopped: null });
    } catch (error) {
      if (this.begun !== begun || error instanceof Cancelled) return;
      if (this.next === null)
        this.store.setState({ progress: null, stopped: { why: 'failed', message: messageOf(error) } });
    }
    this.begun = null;
    this.goOn();
  }

  private goOn(): void {
    if (this.next !== null) this.begin(this.next);
  }
}

export function createLightWork(engine: Engine): LightWork {
  const store = createStore<LightState>(() => first);
  const traces = new Traces(engine, store);
  let timer: ReturnType<typeof setTimeout> | null = null;
  let latest: TreeFile | null = null;
  const ask = () => {
    timer = null;
    if (latest !== null) traces.ask(latest);
  };
  return {
    store,
    trace(file, delayMs = 0) {
      latest = file;
      const { progress } = store.getState();
      store.setState({ progress: progress ?? { done: 0, doing: 'Waiting to begin' }, stopped: null });
      timer ??= setTimeout(ask, delayMs);
    },
    cancel() {
      if (timer !== null) clearTimeout(timer);
      timer = null;
      traces.stop();
      store.setState({ progress: null, stopped: { why: 'cancelled' } });
    },
  };
}
