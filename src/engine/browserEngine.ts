import workerUrl from './browserWorker.ts?worker&url';
import type { Engine } from './engine.ts';
import type { Port } from './messages.ts';
import { createRemoteEngine } from './remoteEngine.ts';
import { workerScript } from './workerScript.ts';

const startWorker = workerScript(workerUrl);

/** The engine in a worker of its own, so that the page never waits. */
export function createBrowserEngine(): Engine {
  const worker = startWorker('engine');
  const engine = createRemoteEngine(worker as unknown as Port, () => worker.terminate());
  worker.onerror = () => engine.fail('The calculation stopped. Reload the page and try again.');
  return engine;
}
