/** What passes between the pool and the threads that trace for it. Every task and every scene has a number of its own. */
import type { CanopyScene } from '../plan/canopyScene.ts';
import type { WaveTask } from '../plan/canopyWave.ts';
import type { WorldTask } from '../plan/worlds/judgeWorld.ts';
import type { Port } from './messages.ts';

/** To a thread that traces waves and does nothing else. */
export type ToTracer =
  /** A scene is sent once; null lets it be forgotten. */
  | { readonly scene: number; readonly is: CanopyScene | null }
  | { readonly task: number; readonly scene: number; readonly what: Omit<WaveTask, 'scene'> }
  | { readonly task: number; readonly what: WorldTask }
  | { readonly task: number; readonly what: 'cancel' };

export type FromTracer =
  | { readonly task: number; readonly share: number }
  | { readonly task: number; readonly result: unknown }
  | { readonly task: number; readonly cancelled: true }
  | { readonly task: number; readonly failed: string };

/** A port that can hand memory over rather than copy it. */
export interface TracerPort extends Port {
  postMessage(message: unknown, transfer?: readonly ArrayBuffer[]): void;
}
