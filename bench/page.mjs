/**
 * How the page feels while light is worked out, in a real browser: `node bench/run.mjs page`. The engine's worker is asked as the page
 * asks it, in the page.
 */
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { build, preview } from 'vite';
import { findBrowser } from '../scripts/browser.mjs';
import { root } from '../scripts/fingerprint.mjs';

/** Runs in the page before anything else: remembers the engine's worker and every long task. */
function watch() {
  const own = /** @type {any} */ (globalThis);
  own.longTasks = [];
  const note = (/** @type {PerformanceObserverEntryList} */ list) =>
    own.longTasks.push(...list.getEntries().map(({ startTime, duration }) => [startTime, duration]));
  new PerformanceObserver(note).observe({ type: 'longtask', buffered: true });
  const Plain = Worker;
  own.Worker = class extends Plain {
    /** @param {string | URL} url @param {WorkerOptions} options */
    constructor(url, options) {
      super(url, options);
      own.engineWorker = this;
    }
  };
}

/** @typedef {{ first: number, partial: number, end: number, cancelled: number, error: number }} Times */

/**
 * Runs in the page: asks for the light of a tree and times what comes back, milliseconds since the ask.
 * @param {{ file: object, call: number, seed: number, cancelAfterMs: number | null }} wanted
 * @returns {Promise<Times>}
 */
function askLight({ file, call, seed, cancelAfterMs }) {
  const worker = /** @type {any} */ (globalThis).engineWorker;
  const say = (/** @type {object | 'cancel'} */ what) => worker.postMessage({ call, what }, []);
  const begun = performance.now();
  const since = () => performance.now() - begun;
  /** @type {Times} */
  const times = { first: 0, partial: 0, end: 0, cancelled: 0, error: 0 };
  return new Promise((resolve) => {
    const hear = (/** @type {MessageEvent} */ { data }) => {
      if (data.call !== call) return;
      if ('progress' in data) {
        times.first ||= since();
        if (data.progress.partial !== undefined && times.partial === 0) {
          times.partial = since();
          const errors = data.progress.partial.report.shoots.map(
            (/** @type {{ standardError: number }} */ shoot) => shoot.standardError,
          );
          times.error = errors.sort((/** @type {number} */ a, /** @type {number} */ b) => a - b)[
            errors.length >> 1
          ];
        }
        return;
      }
      worker.removeEventListener('message', hear);
      times.end = since();
      if ('cancelled' in data) times.cancelled = times.end - (cancelAfterMs ?? 0);
      resolve(times);
    };
    worker.addEventListener('message', hear);
    say({ ask: 'light', file, options: { seed, waves: 4 } });
    if (cancelAfterMs !== null) setTimeout(() => say('cancel'), cancelAfterMs);
  });
}

/** @param {readonly number[]} values */
const sorted = (values) => [...values].sort((a, b) => a - b);
/** @param {readonly number[]} values */
const tell = (values) => {
  const all = sorted(values).map((value) => value.toFixed(0));
  return `${all[all.length >> 1]} ms in the median (${all.join(', ')})`;
};

/** The trees, made by the sources themselves. */
async function trees() {
  const outDir = join(root, 'dist', 'bench');
  await build({
    root,
    logLevel: 'error',
    configFile: false,
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: 'bench/figFile.ts',
      outDir,
      emptyOutDir: false,
      target: 'node20',
      rolldownOptions: { output: { entryFileNames: 'figFile.mjs', codeSplitting: false } },
    },
  });
  const { figFile, sampleFile } = await import(join(outDir, 'figFile.mjs'));
  const sample = sampleFile(root);
  return [80].map((shoots) => ({ shoots, file: figFile(sample, shoots) }));
}

/**
 * The tree with one shoot swung half round.
 * @param {{ axes: readonly { id: string, path: readonly (readonly number[])[] }[] }} file
 */
function pulled(file) {
  const swing = (/** @type {readonly number[]} */ [x = 0, y = 0, z = 0]) => [-x, y, -z];
  const axes = file.axes.map((axis) =>
    axis.id === 'shoot-7' ? { ...axis, path: axis.path.map(swing) } : axis,
  );
  return { ...file, axes };
}

/** @param {import('@playwright/test').Page} page */
async function measure(page) {
  const lines = [];
  let call = 1_000_000;
  for (const { shoots, file } of await trees()) {
    const ask = (
      /** @type {object} */ tree,
      /** @type {number} */ seed,
      /** @type {number | null} */ cancelAfterMs = null,
    ) => page.evaluate(askLight, { file: tree, call: ++call, seed, cancelAfterMs });
    await ask(file, 1);
    /** @type {Times[]} */
    const whole = [];
    /** @type {Times[]} */
    const moved = [];
    for (const seed of [2, 3, 4]) {
      whole.push(await ask(file, seed));
      moved.push(await ask(pulled(file), seed));
    }
    /** @type {number[]} */
    const cancels = [];
    for (let i = 0; i < 6; i++) cancels.push((await ask(file, 11 + i, 15 + 37 * i)).cancelled);
    const of = (/** @type {readonly Times[]} */ times, /** @type {'first' | 'partial' | 'end'} */ what) =>
      tell(times.map((time) => time[what]));
    lines.push(
      `- **${shoots * 12} leaves**: first progress ${of(whole, 'first')}; first picture **${of(whole, 'partial')}**, with a standard error of ${(100 * (whole[0]?.error ?? 0)).toFixed(1)} % of open sky in the median shoot; four waves ${of(whole, 'end')}. One shoot moved: picture of two waves ${of(moved, 'partial')}, all four ${of(moved, 'end')}. A cancel is heard after ${tell(cancels.filter((ms) => ms > 0))}.`,
    );
  }
  return lines;
}

/** Of the built page; gives Markdown. */
export async function measurePage() {
  const server = await preview({ root, logLevel: 'error', preview: { port: 4519, strictPort: true } });
  const executablePath = findBrowser();
  const browser = await chromium.launch({
    ...(executablePath === null ? {} : { executablePath }),
    args: ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
  });
  try {
    const page = await browser.newPage();
    await page.addInitScript(watch);
    await page.goto('http://localhost:4519/');
    await page.waitForTimeout(4000);
    const from = await page.evaluate(() => performance.now());
    const lines = await measure(page);
    const long = await page.evaluate(
      (since) =>
        /** @type {[number, number][]} */ (/** @type {any} */ (globalThis).longTasks)
          .filter(([start]) => start > since)
          .map(([, duration]) => duration),
      from,
    );
    const cores = await page.evaluate(() => navigator.hardwareConcurrency);
    return [
      '## In the page',
      '',
      `In a browser that sees ${cores} cores, from the ask to what comes back:`,
      '',
      ...lines,
      `- Tasks of the page's own thread over 50 ms meanwhile: ${long.length === 0 ? 'none' : long.map((ms) => `${ms} ms`).join(', ')}.`,
      '',
      'Goal: a picture in 100 ms at 1,000 leaves, a cancel within 50 ms, no task over 50 ms.',
      '',
    ].join('\n');
  } finally {
    await browser.close();
    await new Promise((resolve) => server.httpServer.close(resolve));
  }
}
