/**
 * All measurements, each in a process of its own: `npm run bench`. Prints a table and writes it to bench/results.md.
 * `node bench/run.mjs rate error` runs only these.
 */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { buildPage } from '../scripts/build.mjs';
import { root } from '../scripts/fingerprint.mjs';
import { measurePage } from './page.mjs';

const outDir = join(root, 'dist', 'bench');
await build({
  root,
  logLevel: 'error',
  configFile: false,
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    ssr: 'bench/measure.ts',
    outDir,
    target: 'node20',
    minify: false,
    rolldownOptions: { output: { entryFileNames: 'measure.mjs', codeSplitting: false } },
  },
});

/** @param {string} step */
function once(step) {
  const done = spawnSync(process.execPath, [join(outDir, 'measure.mjs'), step], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
    maxBuffer: 1 << 26,
  });
  if (done.status !== 0) throw new Error(`bench: the step ${step} failed`);
  return done.stdout.trim();
}

/**
 * A cold start is taken five times, each in a new process; the quickest is shown, since others may use the machine.
 * @param {string} step
 */
function lines(step) {
  const msOf = (/** @type {string} */ text) => Number(/\*\*(\d+) ms/.exec(text)?.[1]);
  const runs = step.startsWith('cold') ? [1, 2, 3, 4, 5].map(() => once(step)) : [once(step)];
  runs.sort((a, b) => msOf(a) - msOf(b));
  const times = runs.map(msOf).join(', ');
  const text =
    runs.length === 1 ? runs[0] : `${runs[0]}\n\nFive cold starts: ${times} ms; the first is told above.\n`;
  console.log(text, '\n');
  return text ?? '';
}

const all = [
  'rate',
  'cold wasm',
  'cold typescript',
  'growth',
  'incremental leaves',
  'nodes moved',
  'nodes asked again',
  'memory',
  'error',
  'redraw',
  'stroke',
  'search',
  'worlds',
  'plan cost',
  'page',
];
const asked = process.argv.slice(2);
const steps = asked.length === 0 ? all : all.filter((step) => asked.some((name) => step.startsWith(name)));
const [cpu] = cpus();
const machine = `${cpu?.model}, ${cpus().length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GB, Node ${process.versions.node}, ${process.platform}`;
console.log(`${machine}\n`);
const parts = steps.filter((step) => step !== 'page').map(lines);
if (steps.includes('page')) {
  // The built page; after all else, so that the browser takes no time from the others.
  await buildPage('error');
  parts.push(await measurePage());
  console.log(parts.at(-1));
}
if (asked.length === 0) {
  const text = [
    '# Results',
    '',
    `Written by \`npm run bench\` on: ${machine}. Trust the ratios.`,
    '',
    ...parts,
    '',
  ];
  writeFileSync(join(root, 'bench', 'results.md'), text.join('\n'));
}
