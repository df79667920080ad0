/** Everything on the page that is not React: the open tree, the works under way, the preferences and the view. */
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { TreeFile } from '../../document/treeFile.ts';
import type { WeatherTaken } from '../../document/withEpw.ts';
import { createEditor, type Editor } from '../../editor/editor.ts';
import { type Kept, keepOnDevice, type Shelf } from '../../editor/keeping.ts';
import type { Engine } from '../../engine/engine.ts';
import type { Units } from '../../geometry/measure.ts';
import type { Boldness } from '../../plan/choice.ts';
import type { IsoDate } from '../../season/site.ts';
import type { Doubt, SeeInside, StageEye, StageHandle } from '../scene/stageModel.ts';
import type { Colouring } from '../stage/leafShares.ts';
import { createDrawWork, type DrawWork } from './drawWork.ts';
import { followShownTree } from './followShownTree.ts';
import { createLightWork, type LightWork } from './lightWork.ts';
import { createLookWork, type LookWork, type NodePlace } from './lookWork.ts';
import { createMarkWork, type MarkWork } from './markWork.ts';
import { createPlanWork, type PlanWork } from './planWork.ts';
import { createPreferences, type Preferences } from './preferences.ts';
import { createPullWork, type PullView, type PullWork } from './pullWork.ts';
import type { Spotlight } from './spotlight.ts';
import { createTimeWork, type ShownTime, type TimeWork } from './timeWork.ts';

export type SheetSize = 'peek' | 'half' | 'full';

/** The four ways in which the Light sheet shows the light. */
export const lookings = ['shoots', 'day', 'sky', 'spread'] as const;
export type LookingAt = (typeof lookings)[number];

/** How one sees into the crown on the stage. */
export interface Looks extends Pick<SeeInside, 'isCutAway' | 'heightsM'> {
  /** Leaves with light enough to fruit step back. */
  readonly findsShade: boolean;
}

/** What is looked at: never kept, never undone. */
export interface View extends PullView {
  /** What a hand on the stage does: turn the picture, or draw and pull branches. */
  readonly hand: 'look' | 'draw';
  /** The figures of the selected branch are laid open beside it to type in. */
  readonly isLabelOpen: boolean;
  /** The small picture from another side; null: shown where there is room. */
  readonly isSecondOpen: boolean | null;
  readonly hoveredId: string | null;
  /** What the last press on the stage may have meant besides what it selected; null: it was plain. */
  readonly doubt: Doubt | null;
  /** The part of the season whose light is shown; null: all of it. */
  readonly time: ShownTime | null;
  /** What the slider of the Light sheet runs over. */
  readonly timeBy: ShownTime['by'];
  /** The day whose sun path is drawn; null: the day of the sketch. */
  readonly sunDate: IsoDate | null;
  /** Hour at which the sun lights the stage, by the sun's own time; 12 is its highest. */
  readonly sunHour: number;
  readonly colouring: Colouring;
  readonly looks: Looks;
  /** Shoots to be found at a glance; null: none is looked for. */
  readonly spotlight: Spotlight | null;
  readonly lookingAt: LookingAt;
  /** On the Light sheet's day the eye of the stage stands in the sun. */
  readonly isFromSun: boolean;
  /** The place whose sky is looked at. */
  readonly skyAt: NodePlace | null;
  /** The day of the work; null: the day of the sketch. */
  readonly workDate: IsoDate | null;
  readonly boldness: Boldness;
  /** Ways to renew the tree are asked for with the plan. */
  readonly wantsRenewal: boolean;
  /** The Work sheet's stage shows the tree as it stands now, with its buds, rather than in full leaf. */
  readonly isWorkBare: boolean;
  /** The branches are shown as a table to type in, rather than as a list. */
  readonly isGrid: boolean;
  /** A new tree is being chosen from the forms. */
  readonly isStarting: boolean;
  /** A draft with another of these is framed anew: the size of a tree that is chosen from the forms. */
  readonly draftFrame: string | null;
  /** How far the sheet is up on a phone. */
  readonly sheetSize: SheetSize;
  readonly kept: Kept | null;
}

/** Where the eye of the stage stands. */
export interface EyeState {
  /** Null while there is none. */
  readonly now: StageEye | null;
  /** The side it stood at last, before it looked from above. */
  readonly lastSide: 'north' | 'east' | 'south' | 'west';
}

export interface Workbench {
  readonly editor: Editor;
  readonly light: LightWork;
  readonly times: TimeWork;
  readonly look: LookWork;
  readonly plan: PlanWork;
  /** Reads a weather file for a tree, away from the page's own thread. */
  readonly readWeather: (file: TreeFile, text: string) => Promise<WeatherTaken>;
  readonly preferences: StoreApi<Preferences>;
  readonly view: StoreApi<View>;
  readonly pulls: PullWork;
  readonly draws: DrawWork;
  readonly marks: MarkWork;
  /** The stage, while there is one. */
  readonly stage: { current: StageHandle | null };
  readonly eye: StoreApi<EyeState>;
}

const firstView: View = {
  hoveredId: null,
  doubt: null,
  time: null,
  timeBy: 'month',
  sunDate: null,
  sunHour: 12,
  colouring: 'node',
  looks: { findsShade: false, isCutAway: false, heightsM: null },
  spotlight: null,
  lookingAt: 'shoots',
  isFromSun: false,
  skyAt: null,
  workDate: null,
  boldness: 'balanced',
  wantsRenewal: false,
  isWorkBare: false,
  isGrid: false,
  isStarting: false,
  hand: 'look',
  held: null,
  isLabelOpen: false,
  isSecondOpen: null,
  draft: null,
  draftFrame: null,
  sheetSize: 'half',
  kept: null,
};

/** Sets the bench up and begins with the light of the first tree. */
export function createWorkbench(file: TreeFile, engine: Engine, shelf: Shelf, language: string): Workbench {
  const editor = createEditor(file);
  const light = createLightWork(engine);
  const plan = createPlanWork(engine);
  const view = createStore<View>(() => firstView);
  const keeping = keepOnDevice(editor, shelf, Date.now, (kept) => view.setState({ kept }));
  addEventListener('pagehide', keeping.flush);
  document.addEventListener('visibilitychange', keeping.flush);
  editor.store.subscribe((state, before) => {
    const next = state.history.present.file;
    if (next === before.history.present.file) return;
    if (next.id !== before.history.present.file.id) {
      const { sheetSize, kept, colouring, lookingAt, isGrid, hand, isLabelOpen, isSecondOpen } =
        view.getState();
      view.setState({
        ...firstView,
        sheetSize,
        kept,
        colouring,
        lookingAt,
        isGrid,
        hand,
        isLabelOpen,
        isSecondOpen,
      });
    }
  });
  followShownTree(editor, view, light);
  return {
    editor,
    light,
    times: createTimeWork(engine),
    look: createLookWork(engine),
    plan,
    readWeather: (file, text) => engine.takeWeather(file, text).result,
    preferences: createPreferences(shelf, language),
    view,
    pulls: createPullWork(editor, view),
    draws: createDrawWork(editor, view),
    marks: createMarkWork(editor),
    stage: { current: null },
    eye: createStore<EyeState>(() => ({ now: null, lastSide: 'south' })),
  };
}

export const WorkbenchContext = createContext<Workbench | null>(null);

export function useWorkbench(): Workbench {
  const bench = useContext(WorkbenchContext);
  if (bench === null) throw new Error('useWorkbench: there is no workbench above this component');
  return bench;
}

export const useFile = (): TreeFile => useStore(useWorkbench().editor.store, (s) => s.history.present.file);
/** The tree that is drawn: the draft while there is one, else the open one. */
export function useShownFile(): TreeFile {
  const open = useFile();
  return useView().draft ?? open;
}
export const useSelected = (): string | null => useStore(useWorkbench().editor.store, (s) => s.selectedId);
export const useUnits = (): Units => useStore(useWorkbench().preferences, (s) => s.units);
export const usePreferences = (): Preferences => useStore(useWorkbench().preferences);
export const useView = (): View => useStore(useWorkbench().view);
