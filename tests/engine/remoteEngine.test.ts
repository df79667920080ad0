import { MessageChannel } from 'node:worker_threads';
import { afterEach, describe, expect, it } from 'vitest';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { Cancelled, type Engine, type LightAnswer, type Running } from '../../src/engine/engine.ts';
import type { Port } from '../../src/engine/messages.ts';
import { createRemoteEngine } from '../../src/engine/remoteEngine.ts';
import { serve } from '../../src/engine/serve.ts';

const file = { id: 'a-tree' } as TreeFile;
const channels: MessageChannel[] = [];

/** A made-up engine behind a real message channel, which copies every message as a worker would. */
function across(engine: Engine) {
  const channel = new MessageChannel();
  channels.push(channel);
  serve(channel.port2 as unknown as Port, engine);
  return createRemoteEngine(channel.port1 as unknown as Port, () => channel.port1.close());
}

const never: Engine = {
  light: () => pendingUntilCancelled(),
  plan: () => pendingUntilCancelled(),
  replan: () => pendingUntilCancelled(),
  tryCuts: () => pendingUntilCancelled(),
  look: () => pendingUntilCancelled(),
  takeWeather: () => pendingUntilCancelled(),
  dispose: () => {},
};

function pendingUntilCancelled<T>(): Running<T> {
  let reject: (e: Error) => void = () => {};
  const result = new Promise<T>((_, no) => {
    reject = no;
  });
  return { result, cancel: () => reject(new Cancelled()) };
}

afterEach(() => {
  for (const { port1 } of channels.splice(0)) port1.close();
});

describe('an engine across a port', () => {
  it('passes on progress and result', async () => {
    const answer = { nodes: [{ shootId: 's', node: 3, share: 0.31 }] } as unknown as LightAnswer;
    const engine = across({
      ...never,
      light: (_file, options, onProgress) => {
        onProgress?.({ done: 0.25, doing: `tracing ${options?.waves} waves` });
        return { result: Promise.resolve(answer), cancel: () => {} };
      },
    });
    const doing: string[] = [];
    const got = await engine.light(file, { waves: 6 }, (p) => doing.push(p.doing)).result;
    expect(got).toEqual(answer);
    expect(doing).toEqual(['tracing 6 waves']);
  });

  it('keeps two calls apart', async () => {
    const engine = across({
      ...never,
      tryCuts: (ids) => ({ result: Promise.resolve({ shoots: ids } as never), cancel: () => {} }),
    });
    const [first, second] = await Promise.all([
      engine.tryCuts(['a']).result,
      engine.tryCuts(['b', 'c']).result,
    ]);
    expect(first.shoots).toEqual(['a']);
    expect(second.shoots).toEqual(['b', 'c']);
  });

  it('cancels over there and rejects here', async () => {
    const running = across(never).light(file);
    running.cancel();
    await expect(running.result).rejects.toBeInstanceOf(Cancelled);
  });

  it('brings the reason of a failure across', async () => {
    const engine = across({
      ...never,
      plan: () => ({ result: Promise.reject(new Error('plan: the tree has no wood')), cancel: () => {} }),
    });
    await expect(engine.plan(file).result).rejects.toThrow('the tree has no wood');
  });

  it('rejects what is under way when it is disposed of', async () => {
    const engine = across(never);
    const running = engine.light(file);
    engine.dispose();
    await expect(running.result).rejects.toThrow('stopped');
  });

  it('refuses at once what is asked after the worker broke down, instead of waiting for ever', async () => {
    const engine = across(never);
    engine.fail('The calculation stopped.');
    await expect(engine.light(file).result).rejects.toThrow('The calculation stopped.');
    await expect(engine.tryCuts([]).result).rejects.toThrow('The calculation stopped.');
  });
});
