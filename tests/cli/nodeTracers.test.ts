/** The command's own threads, from the command as it is built. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nodeTracers, startThread } from '../../src/cli/nodeTracers.ts';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { Cancelled, type LightAnswer } from '../../src/engine/engine.ts';
import { grownTree } from '../../src/engine/grownTree.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import { createTracerPool } from '../../src/engine/tracerPool.ts';
import type { Tracers } from '../../src/engine/tracers.ts';
import { canopyScene } from '../../src/plan/canopyScene.ts';
import { projectFolder } from '../house/source.ts';
import { exampleText } from './stand.ts';

function sample(name: string): TreeFile {
  const read = parseTreeFile(exampleText(name));
  if (!read.ok) throw new Error(`sample: ${name} is refused, got ${read.reason}`);
  return read.file;
}

const fig = sample('potted-fig-in-leaf');
const bare = sample('potted-fig-bud-break');
const outDir = mkdtempSync(join(tmpdir(), 'boughlight-'));
const script = pathToFileURL(join(outDir, 'command.mjs'));

beforeAll(async () => {
  await build({
    root: projectFolder,
    logLevel: 'error',
    configFile: false,
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: 'src/cli/main.ts',
      outDir,
      target: 'node20',
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'command.mjs', codeSplitting: false } },
    },
  });
}, 60_000);
afterAll(() => rmSync(outDir, { recursive: true, force: true }));

/** A thread that ends with its first task. */
const faulty = new URL(
  `data:text/javascript,${encodeURIComponent(
    "import { parentPort } from 'node:worker_threads'; parentPort.on('message', (m) => { if ('task' in m) process.exit(3); });",
  )}`,
);

async function withTracers<Result>(
  tracers: Tracers | null,
  work: (engine: ReturnType<typeof createInPlaceEngine>) => Promise<Result>,
): Promise<Result> {
  const engine = createInPlaceEngine(tracers);
  try {
    return await work(engine);
  } finally {
    engine.dispose();
  }
}

const light = (tracers: Tracers | null, partials: LightAnswer[] = []): Promise<LightAnswer> =>
  withTracers(
    tracers,
    (engine) =>
      engine.light(fig, { waves: 3, seed: 29 }, ({ partial }) => {
        if (partial !== undefined) partials.push(partial);
      }).result,
  );

describe('light traced by threads', { timeout: 60_000 }, () => {
  let [alone, alonePartials]: [LightAnswer | null, LightAnswer[]] = [null, []];
  beforeAll(async () => {
    alonePartials = [];
    alone = await light(null, alonePartials);
  });

  it.each([1, 2, 3])('is the same to the last bit from %i of them as from none (seed 29)', async (count) => {
    const partials: LightAnswer[] = [];
    const answer = await light(
      createTracerPool(() => startThread(script), count),
      partials,
    );
    expect(answer).toEqual(alone);
    expect(partials).toEqual(alonePartials);
    expect(partials.length).toBeGreaterThan(0);
  });

  it('is the same when a thread breaks down, or all of them (seed 29)', async () => {
    let started = 0;
    const oneFaulty = createTracerPool(() => startThread(started++ === 0 ? faulty : script), 2);
    expect(await light(oneFaulty)).toEqual(alone);
    const onlyOne = createTracerPool(() => startThread(faulty), 1);
    expect(await light(onlyOne)).toEqual(alone);
  });

  it('ends with a plain word when the same wave breaks down two threads', async () => {
    const tracers = createTracerPool(() => startThread(faulty), 3);
    const { input, canopy } = grownTree(fig, {});
    const { result } = tracers.trace({ at: 'nodes', scene: canopyScene(canopy, input), wave: 0 }, () => {});
    await expect(result).rejects.toThrow('The calculation broke down twice: its thread ended with code 3');
    tracers.dispose();
  });

  it('stops at a cancel, and the threads take the next tree', async () => {
    const tracers = createTracerPool(() => startThread(script), 2);
    await withTracers(tracers, async (engine) => {
      const first = engine.light(fig, { waves: 400 });
      await new Promise((resolve) => setTimeout(resolve, 300));
      first.cancel();
      await expect(first.result).rejects.toBeInstanceOf(Cancelled);
      expect(await engine.light(fig, { waves: 3, seed: 29 }).result).toEqual(alone);
    });
  });
});

describe('a plan traced by threads', { timeout: 60_000 }, () => {
  it('is the same as without (seed 31)', async () => {
    const plan = (tracers: Tracers | null) =>
      withTracers(tracers, (engine) => engine.plan(bare, { worlds: 3, waves: 2, seed: 31 }).result);
    expect(await plan(createTracerPool(() => startThread(script), 2))).toEqual(await plan(null));
  });
});

describe('the threads of the command', () => {
  it('are left out where there is one core', () => {
    expect(nodeTracers(script, 1)).toBeNull();
  });
});
