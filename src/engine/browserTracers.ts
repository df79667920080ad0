import type { TracerPort } from './tracerMessages.ts';
import { createTracerPool, type TracerThread } from './tracerPool.ts';
import type { Tracers } from './tracers.ts';
import { workerScript } from './workerScript.ts';

/** A worker of this name traces. */
export const tracerName = 'tracer';

/** More of them are fed too slowly, and each holds a scene. */
const mostWorkers = 8;

export interface Device {
  readonly hardwareConcurrency: number;
  /** Gigabytes, at most 8; not every browser tells. */
  readonly deviceMemory?: number;
}

/** One core is left to the page where there are more than two; a device of little memory gets two tracers at most. */
export function tracerCount({ hardwareConcurrency: cores, deviceMemory = 8 }: Device): number {
  if (!(cores >= 2)) return 0;
  return Math.min(deviceMemory <= 2 ? 2 : mostWorkers, Math.max(2, cores - 1));
}

function startThread(startWorker: (name: string) => Worker): TracerThread {
  const worker = startWorker(tracerName);
  const thread: TracerThread = {
    port: worker as unknown as TracerPort,
    onBreakdown: null,
    stop: () => worker.terminate(),
  };
  worker.onerror = (event) => {
    event.preventDefault();
    thread.onBreakdown?.(event.message);
  };
  return thread;
}

/** The tracers of the engine's worker, started by its own script; null where the engine has to trace by itself. */
export function browserTracers(): Tracers | null {
  // Some older browsers start no worker from within a worker.
  if (typeof Worker === 'undefined') return null;
  const count = tracerCount(navigator);
  if (count === 0) return null;
  const startWorker = workerScript(self.location.href);
  return createTracerPool(() => startThread(startWorker), count);
}
