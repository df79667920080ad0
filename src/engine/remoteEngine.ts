import type { Plan } from '../plan/plan.ts';
import { Cancelled, type Engine, type LightAnswer, type Running, type Trial } from './engine.ts';
import type { Progress } from './job.ts';
import type { Call, FromWorker, Port, ToWorker } from './messages.ts';

interface Pending {
  readonly resolve: (result: unknown) => void;
  readonly reject: (reason: Error) => void;
  readonly onProgress: (progress: Progress<unknown>) => void;
}

type OnProgress = Pending['onProgress'] | undefined;

/** The asking side: an engine whose work is done across the port. `stop` ends the worker. */
export function createRemoteEngine(port: Port, stop: () => void): Engine & { fail(why: string): void } {
  const pending = new Map<number, Pending>();
  let lastCall = 0;
  let ended: string | null = null;

  const take = (call: number): Pending | undefined => {
    const found = pending.get(call);
    pending.delete(call);
    return found;
  };

  port.onmessage = ({ data }) => {
    const message = data as FromWorker;
    if ('progress' in message) pending.get(message.call)?.onProgress(message.progress);
    else if ('result' in message) take(message.call)?.resolve(message.result);
    else if ('cancelled' in message) take(message.call)?.reject(new Cancelled());
    else take(message.call)?.reject(new Error(message.failed));
  };

  function ask<Result>(what: Call, onProgress: Pending['onProgress'] = () => {}): Running<Result> {
    if (ended !== null) return { result: Promise.reject(new Error(ended)), cancel: () => {} };
    const call = ++lastCall;
    const send = (message: ToWorker) => port.postMessage(message);
    const result = new Promise<Result>((resolve, reject) => {
      pending.set(call, { resolve: resolve as Pending['resolve'], reject, onProgress });
    });
    send({ call, what });
    return {
      result,
      cancel: () => {
        if (pending.has(call)) send({ call, what: 'cancel' });
      },
    };
  }

  /** The worker has broken down: everything under way is lost, and what is asked from now on is refused. */
  const fail = (why: string): void => {
    ended ??= why;
    const lost = Array.from(pending.values());
    pending.clear();
    for (const { reject } of lost) reject(new Error(why));
  };

  return {
    light: (file, options = {}, tell) =>
      ask<LightAnswer>({ ask: 'light', file, options }, tell as OnProgress),
    plan: (file, options = {}, tell) => ask<Plan>({ ask: 'plan', file, options }, tell),
    tryCuts: (cutIds, tell) => ask<Trial>({ ask: 'tryCuts', cutIds }, tell as OnProgress),
    look: (file, question, options = {}, tell) => ask({ ask: 'look', file, question, options }, tell),
    dispose: () => {
      fail('The work was stopped.');
      stop();
    },
    fail,
  };
}
