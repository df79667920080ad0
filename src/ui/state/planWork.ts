/** The cut list of the open tree, and what the ticked cuts would do. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { TreeFile } from '../../document/treeFile.ts';
import {
  Cancelled,
  type Engine,
  type PlanOptions,
  type Replanned,
  type Running,
  type Trial,
} from '../../engine/engine.ts';
import type { Progress } from '../../engine/job.ts';
import type { Boldness } from '../../plan/choice.ts';
import type { Cut } from '../../plan/cut.ts';
import type { Plan } from '../../plan/plan.ts';
import type { IsoDate } from '../../season/site.ts';
import { messageOf } from './lightWork.ts';

/** What the list is asked for. */
export interface PlanAsked {
  readonly date: IsoDate;
  readonly boldness: Boldness;
  /** Ways to renew the tree, too. */
  readonly renewal: boolean;
}

export interface PlanState {
  /** The tree that the plan is for; when it is not the open one, the plan is out of date. */
  readonly file: TreeFile | null;
  readonly plan: Plan | null;
  /** What that plan was asked for; null without one. */
  readonly asked: PlanAsked | null;
  /** The plan is a first answer, on canopies grown for the one before; it is made anew on its own soon. */
  readonly isApproximate: boolean;
  /** Ids of the cuts that are ticked. */
  readonly ticked: ReadonlySet<string>;
  /** The tree with the ticked cuts made; null until it is known. While `isTrying` older than `ticked`, or not yet regrown. */
  readonly trial: Trial | null;
  readonly isTrying: boolean;
  readonly progress: Progress | null;
  readonly stopped:
    | { readonly why: 'cancelled' }
    | { readonly why: 'failed'; readonly message: string }
    | null;
}

export interface PlanWork {
  readonly store: StoreApi<PlanState>;
  make(file: TreeFile, asked: PlanAsked): void;
  cancel(): void;
  /** Ticks or unticks these cuts and scores the tree anew. */
  tick(cutIds: readonly string[], isTicked: boolean): void;
}

const first: PlanState = {
  file: null,
  plan: null,
  asked: null,
  isApproximate: false,
  ticked: new Set(),
  trial: null,
  isTrying: false,
  progress: null,
  stopped: null,
};

/** Scores the ticked cuts: at once, and again when the tree has been regrown for them. Newer ticks stop it. */
function scoring(engine: Engine, store: StoreApi<PlanState>): () => Promise<void> {
  let trying: Running<Trial> | null = null;
  return async () => {
    trying?.cancel();
    store.setState({ isTrying: true });
    const mine = engine.tryCuts([...store.getState().ticked], ({ partial }) => {
      if (trying === mine && partial !== undefined) store.setState({ trial: partial });
    });
    trying = mine;
    try {
      const trial = await mine.result;
      if (trying === mine) store.setState({ trial, isTrying: false });
    } catch (error) {
      if (trying !== mine || error instanceof Cancelled) return;
      store.setState({ isTrying: false, stopped: { why: 'failed', message: messageOf(error) } });
    }
  };
}

/**
 * All advised cuts but those that stood unticked on the list before, when that was of the same tree, and of the grower's calls those that
 * stood ticked; what the grower marked to go is ticked anew.
 */
function tickedOf({ cuts, yourCall }: Plan, file: TreeFile, before: PlanState): ReadonlySet<string> {
  const known = before.file?.id === file.id ? before : first;
  const left = new Set(known.plan?.cuts.map(({ id }) => id).filter((id) => !known.ticked.has(id)));
  const isMarked = ({ reasons }: Cut) => reasons[0]?.rule === 'pinned';
  const advised = cuts.filter((cut) => isMarked(cut) || !left.has(cut.id));
  const called = yourCall.filter(({ id }) => known.ticked.has(id));
  return new Set([...advised, ...called].map(({ id }) => id));
}

const made = { trial: null, progress: null, stopped: null } as const;

/** Marks come in rows, tap after tap: the tree is regrown when the hand rests. */
const regrowDelayMs = 900;

/** One plan at a time: the one asked for last. A mark or another boldness is answered at once, then regrown. */
function making(engine: Engine, store: StoreApi<PlanState>, onPlan: () => void) {
  let running: Running<unknown> | null = null;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const stop = () => {
    clearTimeout(resting);
    running?.cancel();
    running = null;
  };
  const tell = (mine: Running<unknown>, progress: Progress) => {
    if (running === mine) store.setState({ progress });
  };
  async function follow(mine: Running<Replanned>, file: TreeFile, asked: PlanAsked): Promise<void> {
    running = mine;
    try {
      const { plan, isApproximate } = await mine.result;
      if (running !== mine) return;
      const ticked = tickedOf(plan, file, store.getState());
      store.setState({ file, plan, asked, isApproximate, ticked, ...made });
      onPlan();
      if (isApproximate) resting = setTimeout(() => fromScratch(file, asked), regrowDelayMs);
    } catch (error) {
      if (running !== mine || error instanceof Cancelled) return;
      store.setState({ progress: null, stopped: { why: 'failed', message: messageOf(error) } });
    }
  }
  function fromScratch(file: TreeFile, asked: PlanAsked): void {
    store.setState({ progress: { done: 0, doing: 'Growing the summer canopy' }, stopped: null });
    const { result, cancel } = engine.plan(file, optionsOf(asked), (progress) => tell(mine, progress));
    const mine = { result: result.then((plan) => ({ plan, isApproximate: false })), cancel };
    void follow(mine, file, asked);
  }
  function fromLast(file: TreeFile, asked: PlanAsked): void {
    store.setState({ progress: { done: 0, doing: 'Looking again' }, stopped: null });
    const { result, cancel } = engine.replan(file, optionsOf(asked), (progress) => tell(mine, progress));
    // A plan from scratch says how sure it is; one answered from the plan before may not.
    const isFirst = ({ isApproximate, plan }: Replanned) => isApproximate || plan.confidence === null;
    const mine = {
      result: result.then((answer) => ({ plan: answer.plan, isApproximate: isFirst(answer) })),
      cancel,
    };
    void follow(mine, file, asked);
  }
  return { fromScratch, fromLast, stop };
}

const optionsOf = ({ date, boldness, renewal }: PlanAsked): PlanOptions => ({
  date,
  boldness,
  ...(renewal && { renewal }),
});

export function createPlanWork(engine: Engine): PlanWork {
  const store = createStore<PlanState>(() => first);
  const tryTicked = scoring(engine, store);
  const plans = making(engine, store, () => void tryTicked());
  return {
    store,
    make(file, asked) {
      plans.stop();
      const { plan, file: before } = store.getState();
      if (plan !== null && before?.id === file.id) plans.fromLast(file, asked);
      else plans.fromScratch(file, asked);
    },
    cancel() {
      plans.stop();
      store.setState({ progress: null, stopped: { why: 'cancelled' } });
    },
    tick(cutIds, isTicked) {
      const ticked = new Set(store.getState().ticked);
      for (const id of cutIds) {
        if (isTicked) ticked.add(id);
        else ticked.delete(id);
      }
      store.setState({ ticked });
      void tryTicked();
    },
  };
}
