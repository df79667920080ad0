/** What passes between the two sides of a worker. Every call has a number of its own. */
import type { TreeFile } from '../document/treeFile.ts';
import type { LightOptions, PlanOptions } from './engine.ts';
import type { Progress } from './job.ts';
import type { LookOptions, LookQuestion } from './look.ts';

export type Call =
  | { readonly ask: 'light'; readonly file: TreeFile; readonly options: LightOptions }
  | { readonly ask: 'plan'; readonly file: TreeFile; readonly options: PlanOptions }
  | { readonly ask: 'replan'; readonly file: TreeFile; readonly options: PlanOptions }
  | { readonly ask: 'takeWeather'; readonly file: TreeFile; readonly text: string }
  | { readonly ask: 'tryCuts'; readonly cutIds: readonly string[] }
  | {
      readonly ask: 'look';
      readonly file: TreeFile;
      readonly question: LookQuestion;
      readonly options: LookOptions;
    };

export type ToWorker =
  | { readonly call: number; readonly what: Call }
  | { readonly call: number; readonly what: 'cancel' };

export type FromWorker =
  | { readonly call: number; readonly progress: Progress<unknown> }
  | { readonly call: number; readonly result: unknown }
  | { readonly call: number; readonly cancelled: true }
  | { readonly call: number; readonly failed: string };

/** The part of a worker, a worker's inside or a message port that both sides need. */
export interface Port {
  postMessage(message: unknown): void;
  onmessage: ((event: { data: unknown }) => void) | null;
}
