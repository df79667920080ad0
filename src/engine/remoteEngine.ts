import type { Plan } from '../plan/plan.ts';
import {
  Cancelled,
  type Engine,
  type LightAnswer,
  type Replanned,
  type Running,
  type Trial,
} from './engine.ts';
import type { Progress } from './job.ts';
import type { Call, FromWorker, Port, ToWorker } from './messages.ts';

interface Pending {
  readonly resolve: (result: unknown) => void;
  readonly reject: (reason: Error) => void;
  readonly onProgress: (progress: Progress<unknown>) => void;
}

type OnProgress = Pending['onProgress'] | undefined;

function settle(pending: Map<number, Pending>, message: FromWorker): void {
  const of = pending.get(message.call);
  if ('progress' in message) {
    of?.onProgress(message.progress);
    return;
  }
  pending.delete(message.call);
  if ('result' in message) of?.resolve(message.result);
  else of?.reject('cancelled' in message ? new Cancelled() : new Error(message.failed));
}

/** The asking side: an engine whose work is done across the port. `stop` ends the worker. */
export function createRemoteEngine(port: Port, stop: () => void): Engine & { fail(why: string): void } {
  const pending = new Map<number, Pending>();
  let lastCall = 0;
  let ended: string | null = null;

  port.onmessage = ({ data }) => settle(pending, data as FromWorker);

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
    plan: (file, options = {}, tell) => ask<Plan>({ ask: 'plan', file, options }, tell as OnProgress),
    replan: (file, options = {}, tell) =>
      ask<Replanned>({ ask: 'replan', file, options }, tell as OnProgress),
    tryCuts: (cutIds, tell) => ask<Trial>({ ask: 'tryCuts', cutIds }, tell as OnProgress),
    look: (file, question, options = {}, tell) => ask({ ask: 'look', file, question, options }, tell),
    takeWeather: (file, text) => ask({ ask: 'takeWeather', file, text }),
    dispose: () => {
      fail('The work was stopped.');
      stop();
    },
    fail,
  };
}
