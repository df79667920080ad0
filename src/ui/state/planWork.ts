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
  /** The plan is being tried in plausible trees and years, or was stopped before: how sure it is is not known. */
  readonly isFirst: boolean;
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
  isFirst: false,
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
  // On a first list all stand ticked: no word of the grower.
  const said = ({ id }: Cut) =>
    known.ticked.has(id) && !(known.isFirst && known.plan?.cuts.some((cut) => cut.id === id));
  const called = yourCall.filter(said);
  return new Set([...advised, ...called].map(({ id }) => id));
}

/** What was unticked on the first list stays so. */
function afterFirst(
  ticked: ReadonlySet<string>,
  { isFirst, plan, ticked: now }: PlanState,
): ReadonlySet<string> {
  if (!isFirst) return ticked;
  const left = new Set(plan?.cuts.map(({ id }) => id).filter((id) => !now.has(id)));
  return new Set([...ticked].filter((id) => !left.has(id)));
}

const made = { trial: null, progress: null, stopped: null } as const;

/** Marks come in rows, tap after tap: the tree is regrown when the hand rests. */
const regrowDelayMs = 900;

type OnProgress = (progress: Progress<Plan>) => void;

function plannedAnew(engine: Engine, file: TreeFile, asked: PlanAsked, tell: OnProgress): Running<Replanned> {
  const { result, cancel } = engine.plan(file, optionsOf(asked), tell);
  return { result: result.then((plan) => ({ plan, isApproximate: false })), cancel };
}

/** A plan from scratch says how sure it is; one answered from the plan before may not. */
function plannedFromLast(
  engine: Engine,
  file: TreeFile,
  asked: PlanAsked,
  tell: OnProgress,
): Running<Replanned> {
  const { result, cancel } = engine.replan(file, optionsOf(asked), tell);
  const isFirst = ({ isApproximate, plan }: Replanned) => isApproximate || plan.confidence === null;
  return {
    result: result.then((answer) => ({ plan: answer.plan, isApproximate: isFirst(answer) })),
    cancel,
  };
}

/** One plan at a time: the one asked for last. A mark or another boldness is answered at once, then regrown. */
function making(engine: Engine, store: StoreApi<PlanState>, onPlan: () => void) {
  let running: Running<unknown> | null = null;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const stop = () => {
    clearTimeout(resting);
    running?.cancel();
    running = null;
  };
  /** The list before the one that is being made, with its ticks. */
  let before = first;
  const tell = (
    mine: Running<unknown>,
    { partial, ...progress }: Progress<Plan>,
    file: TreeFile,
    asked: PlanAsked,
  ) => {
    if (running !== mine) return;
    store.setState({ progress });
    if (partial === undefined) return;
    const ticked = tickedOf(partial, file, before);
    store.setState({ file, plan: partial, asked, isApproximate: false, isFirst: true, ticked, trial: null });
    onPlan();
  };
  async function follow(mine: Running<Replanned>, file: TreeFile, asked: PlanAsked): Promise<void> {
    running = mine;
    before = store.getState();
    try {
      const { plan, isApproximate } = await mine.result;
      if (running !== mine) return;
      const ticked = afterFirst(tickedOf(plan, file, before), store.getState());
      store.setState({ file, plan, asked, isApproximate, isFirst: false, ticked, ...made });
      onPlan();
      if (isApproximate) resting = setTimeout(() => fromScratch(file, asked), regrowDelayMs);
    } catch (error) {
      if (running !== mine || error instanceof Cancelled) return;
      store.setState({ progress: null, stopped: { why: 'failed', message: messageOf(error) } });
    }
  }
  function ask(begin: typeof plannedAnew, doing: string, file: TreeFile, asked: PlanAsked): void {
    store.setState({ progress: { done: 0, doing }, stopped: null });
    const mine = begin(engine, file, asked, (progress) => tell(mine, progress, file, asked));
    void follow(mine, file, asked);
  }
  const fromScratch = (file: TreeFile, asked: PlanAsked) =>
    ask(plannedAnew, 'Growing the summer canopy', file, asked);
  const fromLast = (file: TreeFile, asked: PlanAsked) => ask(plannedFromLast, 'Looking again', file, asked);
  return { fromScratch, fromLast, stop };
}

const optionsOf = ({ date, boldness, renewal }: PlanAsked): PlanOptions => ({
  date,
  boldness,
  firstList: true,
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
