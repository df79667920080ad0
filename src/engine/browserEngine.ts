import workerUrl from './browserWorker.ts?worker&url';
import type { Engine } from './engine.ts';
import type { Port } from './messages.ts';
import { createRemoteEngine } from './remoteEngine.ts';

interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { createScriptURL(url: string): string },
  ): { createScriptURL(url: string): unknown };
}

const { trustedTypes } = globalThis as { trustedTypes?: TrustedTypes };

/** The page's policy lets a worker be made from this one script and from nothing else. */
const policy = trustedTypes?.createPolicy('boughlight-worker', {
  createScriptURL: (url) => {
    if (url !== workerUrl) throw new Error(`browserEngine: no worker is made from ${url}`);
    return url;
  },
});

/** The engine in a worker of its own, so that the page never waits. */
export function createBrowserEngine(): Engine {
  const url = policy === undefined ? workerUrl : (policy.createScriptURL(workerUrl) as string);
  const worker = new Worker(url, { type: 'module' });
  const engine = createRemoteEngine(worker as unknown as Port, () => worker.terminate());
  worker.onerror = () => engine.fail('The calculation stopped. Reload the page and try again.');
  return engine;
}
