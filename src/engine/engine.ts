/** What the page and the headless command ask of the engine, whoever carries its jobs. */
import type { TreeFile } from '../document/treeFile.ts';
import type { WeatherTaken } from '../document/withEpw.ts';
import type { Weather } from '../light/sky/dayLight.ts';
import type { SkyKind } from '../light/sky/skyEnergy.ts';
import type { Boldness } from '../plan/choice.ts';
import type { Plan } from '../plan/plan.ts';
import type { Score } from '../plan/score.ts';
import type { IsoDate, Period } from '../season/site.ts';
import type { Progress } from './job.ts';
import type { LookAnswers, LookOptions, LookQuestion } from './look.ts';
import type { LeafLight, LightReport, NodeFigures, NodeLight } from './reports.ts';

export interface LightOptions {
  /** Of every day of the period; default normal. */
  readonly weather?: Weather;
  /** How the light of the sky lies over it; default uniform. */
  readonly sky?: SkyKind;
  /** Default: leaf-out to the last useful fig. */
  readonly period?: Period;
  /** Only the hour of each day that begins at this solar time, 0 to 23: 12 begins when the sun stands highest. */
  readonly solarHour?: number;
  /** Waves of rays, 2 or more; default 8. With `error`: no more than so many, default 64. */
  readonly waves?: number;
  /**
   * Standard error that is enough for the median shoot, as share of open sky (0.01 is 1 %): waves are traced, 4 at least,
   * until it is reached.
   */
  readonly error?: number;
  /** Of the rays; default 1. */
  readonly seed?: number;
  /** Of what chance draws in the crown; default 1. */
  readonly leafSeed?: number;
}

export interface PlanOptions {
  /** Worlds that the plan is tried in, 0 for none; default 32. */
  readonly worlds?: number;
  /** A first list, too, as the `partial` of the progress: as soon as it is found, before it is tried in worlds. */
  readonly firstList?: boolean;
  /** Ways to renew the tree, too. */
  readonly renewal?: boolean;
  /** A close bound on the search for what to keep, too: up to some minutes of work. */
  readonly prove?: boolean;
  /** Default: the day of the sketch. */
  readonly date?: IsoDate;
  /** Default balanced. */
  readonly boldness?: Boldness;
  /** As for the light. */
  readonly weather?: Weather;
  readonly sky?: SkyKind;
  readonly waves?: number;
  /** Of the rays; default 1. */
  readonly seed?: number;
  /** Of what chance draws in the crown; default 1. */
  readonly leafSeed?: number;
}

export interface LightAnswer {
  readonly report: LightReport;
  /** Light of the period at every node of every shoot. */
  readonly nodes: readonly NodeFigures[];
  /** The same on every leaf; leaf i is that of node i. */
  readonly leaves: readonly LeafLight[];
}

/** The tree of the last plan with only the ticked cuts made. */
export interface Trial {
  readonly score: Score;
  /** Light of the shoots that still stand, over the season. */
  readonly shoots: readonly { readonly id: string; readonly lightFraction: number }[];
  /** The same at every node of theirs, for the stage. */
  readonly nodes: readonly NodeLight[];
}

/** The last plan anew with other pins or another boldness. */
export interface Replanned {
  readonly plan: Plan;
  /**
   * True where other growth goes than the canopies were grown for: every kept shoot is as strong as the last plan made it.
   * `plan` regrows them: its figures differ by a few per cent, and it may find another set.
   */
  readonly isApproximate: boolean;
}

/** Work under way. `result` rejects with a `Cancelled` error after `cancel`. */
export interface Running<Result> {
  readonly result: Promise<Result>;
  cancel(): void;
}

export interface Engine {
  /** Light per shoot. A second call for the same tree, site and seed only weighs the traced rays anew. */
  light(
    file: TreeFile,
    options?: LightOptions,
    onProgress?: (p: Progress<LightAnswer>) => void,
  ): Running<LightAnswer>;
  /** A cut list. Keeps what is needed for `tryCuts`, from the first list on. */
  plan(file: TreeFile, options?: PlanOptions, onProgress?: (p: Progress<Plan>) => void): Running<Plan>;
  /**
   * The cut list at once for a tree that differs from that of the last plan in pins alone, or for another boldness: nothing is
   * traced. Any other tree, and any other option that changes, is planned from scratch. Counts as the last plan from then on.
   */
  replan(file: TreeFile, options?: PlanOptions, onProgress?: (p: Progress<Plan>) => void): Running<Replanned>;
  /**
   * Scores the tree of the last plan with these of its cuts made and no others. A first answer comes within milliseconds as
   * the `partial` of its progress; the result may wait until the tree has been regrown for these cuts.
   */
  tryCuts(cutIds: readonly string[], onProgress?: (p: Progress<Trial>) => void): Running<Trial>;
  /** The shade of a day, or the sky over a node. Rejects a shoot or node that the tree does not have. */
  look<Ask extends LookQuestion['ask']>(
    file: TreeFile,
    question: Extract<LookQuestion, { readonly ask: Ask }>,
    options?: LookOptions,
    onProgress?: (p: Progress) => void,
  ): Running<LookAnswers[Ask]>;
  /** The tree with the weather of an hourly weather file in place of its own, or why not: see `withEpw`. */
  takeWeather(file: TreeFile, text: string): Running<WeatherTaken>;
  dispose(): void;
}

export class Cancelled extends Error {
  constructor() {
    super('Cancelled');
    this.name = 'Cancelled';
  }
}
