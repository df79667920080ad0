/** The command's tracers: threads that run the command's own file again. */
import { availableParallelism } from 'node:os';
import { type MessagePort, Worker } from 'node:worker_threads';
import type { TracerPort } from '../engine/tracerMessages.ts';
import { createTracerPool, type TracerThread } from '../engine/tracerPool.ts';
import type { Tracers } from '../engine/tracers.ts';

/** Told to a thread of the command, so that it traces instead of running the command once more. */
export const tracerRole = 'boughlight tracer';

/** More of them are fed too slowly, and each holds a scene. */
const mostThreads = 8;

/** One thread; see `nodeTracers` for the script. */
export function startThread(file: URL): TracerThread {
  const worker = new Worker(file, { workerData: tracerRole, argv: [], stdin: false });
  const port: TracerPort = {
    postMessage: (message, transfer = []) => worker.postMessage(message, transfer),
    onmessage: null,
  };
  const thread: TracerThread = { port, onBreakdown: null, stop: () => void worker.terminate() };
  worker.on('message', (data: unknown) => port.onmessage?.({ data }));
  worker.on('error', (error) => thread.onBreakdown?.(error.message));
  worker.on('exit', (code) => thread.onBreakdown?.(`its thread ended with code ${code}`));
  return thread;
}

/** @param file a script that serves a tracer when its `workerData` is `tracerRole`; null without a second core */
export function nodeTracers(file: URL, cores = availableParallelism()): Tracers | null {
  const count = Math.min(mostThreads, cores);
  return count < 2 ? null : createTracerPool(() => startThread(file), count);
}

/** A thread's way to whoever started it. */
export function nodePort(inner: MessagePort): TracerPort {
  const port: TracerPort = {
    postMessage: (message, transfer = []) => inner.postMessage(message, transfer),
    onmessage: null,
  };
  inner.on('message', (data: unknown) => port.onmessage?.({ data }));
  return port;
}
