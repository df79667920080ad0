/** The day and the sky that are looked at: asked for when they are shown, the newest question first. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { TreeFile } from '../../document/treeFile.ts';
import { Cancelled, type Engine, type Running } from '../../engine/engine.ts';
import type { Progress } from '../../engine/job.ts';
import type { DayAnswer, SkyAnswer } from '../../engine/look.ts';
import type { IsoDate } from '../../season/site.ts';
import { messageOf } from './lightWork.ts';

export interface NodePlace {
  readonly shootId: string;
  /** 1 at the base. */
  readonly node: number;
}

export interface Looked<Answer> {
  /** What the answer is for: the tree, and the day or the node. An older answer stays until the newer one is there. */
  readonly file: TreeFile | null;
  readonly of: string | null;
  readonly answer: Answer | null;
  /** Null when nothing is under way. */
  readonly progress: Progress | null;
  readonly failed: string | null;
}

export interface LookWork {
  readonly day: StoreApi<Looked<DayAnswer>>;
  readonly sky: StoreApi<Looked<SkyAnswer>>;
  /** Asks for that day of the tree, unless it is there or on its way. */
  showDay(file: TreeFile, date: IsoDate): void;
  showSky(file: TreeFile, place: NodePlace): void;
}

/** Dots of the picture of the sky each way: its edges stay crisp on a phone. Our choice. */
const skySize = 128;

export const skyKey = ({ shootId, node }: NodePlace): string => `${shootId} ${node}`;

function asking<Answer>(): {
  readonly store: StoreApi<Looked<Answer>>;
  ask(file: TreeFile, of: string, begin: (onProgress: (p: Progress) => void) => Running<Answer>): void;
} {
  const nothing: Looked<Answer> = { file: null, of: null, answer: null, progress: null, failed: null };
  const store = createStore<Looked<Answer>>(() => nothing);
  let running: Running<Answer> | null = null;
  let wanted: { readonly file: TreeFile; readonly of: string } | null = null;

  const follow = async (mine: Running<Answer>, file: TreeFile, of: string): Promise<void> => {
    try {
      const answer = await mine.result;
      if (running === mine) store.setState({ file, of, answer, progress: null, failed: null });
    } catch (error) {
      if (running !== mine || error instanceof Cancelled) return;
      wanted = null;
      store.setState({ progress: null, failed: messageOf(error) });
    }
  };

  return {
    store,
    ask(file, of, begin) {
      if (wanted?.file === file && wanted.of === of) return;
      running?.cancel();
      wanted = { file, of };
      store.setState({ progress: { done: 0, doing: 'Waiting to begin' }, failed: null });
      const mine = begin((progress) => {
        if (running === mine) store.setState({ progress });
      });
      running = mine;
      void follow(mine, file, of);
    },
  };
}

export function createLookWork(engine: Engine): LookWork {
  const [day, sky] = [asking<DayAnswer>(), asking<SkyAnswer>()];
  return {
    day: day.store,
    sky: sky.store,
    showDay: (file, date) =>
      day.ask(file, date, (onProgress) => engine.look(file, { ask: 'day', date }, {}, onProgress)),
    showSky: (file, place) =>
      sky.ask(file, skyKey(place), (onProgress) =>
        engine.look(file, { ask: 'sky', ...place, size: skySize }, {}, onProgress),
      ),
  };
}
