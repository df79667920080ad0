/**
 * Every check of the project, each in its turn whatever the ones before it said. Prints a table and, as
 * its last line, `N passed, N failed`: the tests of both runners, and one for each step that is no test run.
 * A test that is skipped counts as failed.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { ensureBrowser } from './browser.mjs';
import { root } from './fingerprint.mjs';

/**
 * @typedef {{ passed: number, failed: number }} Count
 * @typedef {{ name: string, run: () => Count }} Step
 */

const require = createRequire(import.meta.url);
const reports = join(root, 'test-results');

/**
 * The script that starts a package's command.
 * @param {string} packageName
 * @param {string} [command]
 */
function commandOf(packageName, command = packageName) {
  // Not every package lets its package.json be imported: take it from its place.
  const folder = (require.resolve.paths(packageName) ?? [])
    .map((modules) => join(modules, packageName))
    .find((path) => readIfThere(join(path, 'package.json')) !== '');
  if (folder === undefined) throw new Error(`commandOf: the package ${packageName} is not installed`);
  const { bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  return join(folder, typeof bin === 'string' ? bin : bin[command]);
}

/** @param {string} path */
function readIfThere(path) {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}

/**
 * @param {string} script
 * @param {string[]} args
 * @param {Record<string, string>} [extra] variables
 */
function node(script, args, extra = {}) {
  const env = { ...process.env, ...extra };
  const done = spawnSync(process.execPath, [script, ...args], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env,
  });
  return done.status === 0;
}

/** @param {boolean} good @returns {Count} */
const one = (good) => (good ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 });

/**
 * A runner that failed without a failed test (a file that does not load, a thrown error) counts as one failed.
 * @param {boolean} good @param {Count} count @returns {Count}
 */
const honest = (good, { passed, failed }) => ({ passed, failed: good ? failed : Math.max(1, failed) });

/** @returns {Count} */
function unitTests() {
  const file = join(reports, 'unit.json');
  const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const good = node(commandOf('vitest'), args);
  const report = JSON.parse(readIfThere(file) || '{}');
  const empty = (report.testResults ?? []).filter(
    (/** @type {any} */ suite) => suite.status === 'failed' && suite.assertionResults.length === 0,
  ).length;
  const { numPassedTests: passed = 0, numFailedTests = 0, numPendingTests = 0, numTodoTests = 0 } = report;
  return honest(good, { passed, failed: numFailedTests + numPendingTests + numTodoTests + empty });
}

/** @returns {Count} */
function browserTests() {
  const file = join(reports, 'browser.json');
  const extra = { BOUGHLIGHT_BROWSER: ensureBrowser(), PLAYWRIGHT_JSON_OUTPUT_NAME: file };
  const script = join(dirname(require.resolve('@playwright/test/package.json')), 'cli.js');
  const good = node(script, ['test', '--reporter=list,json'], extra);
  const { stats = {} } = JSON.parse(readIfThere(file) || '{}');
  const { expected: passed = 0, unexpected = 0, flaky = 0, skipped = 0 } = stats;
  return honest(good, { passed, failed: unexpected + flaky + skipped });
}

/** @type {Step[]} */
const steps = [
  {
    name: 'types of the core',
    run: () => one(node(commandOf('typescript', 'tsc'), ['-p', 'tsconfig.core.json'])),
  },
  { name: 'types of all', run: () => one(node(commandOf('typescript', 'tsc'), ['-p', 'tsconfig.json'])) },
  {
    name: 'lint',
    run: () =>
      one(
        node(commandOf('oxlint'), ['--type-aware', '--deny-warnings', '--report-unused-disable-directives']),
      ),
  },
  {
    name: 'format',
    run: () => one(node(commandOf('@biomejs/biome', 'biome'), ['check', '--error-on-warnings'])),
  },
  { name: 'nothing unused', run: () => one(node(commandOf('knip'), ['--no-progress'])) },
  { name: 'unit and published', run: unitTests },
  { name: 'build', run: () => one(node(join(root, 'scripts', 'build.mjs'), [])) },
  { name: 'browser', run: browserTests },
];

/** @param {Step} step */
function take({ name, run }) {
  console.log(`\n== ${name}`);
  const before = performance.now();
  /** @type {Count} */
  let count;
  try {
    count = run();
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    count = one(false);
  }
  return { name, ...count, seconds: (performance.now() - before) / 1000 };
}

rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !steps.some((step) => step.name === name));
if (unknown.length > 0) {
  console.error(
    `No step is called ${unknown.join(', ')}. There are: ${steps.map(({ name }) => name).join(', ')}.`,
  );
  process.exit(2);
}
const results = steps.filter(({ name }) => asked.length === 0 || asked.includes(name)).map(take);

const row = (/** @type {(string | number)[]} */ [name, passed, failed, seconds]) =>
  `${String(name).padEnd(20)}${String(passed).padStart(8)}${String(failed).padStart(8)}${String(seconds).padStart(10)}`;
console.log(`\n${row(['step', 'passed', 'failed', 'seconds'])}`);
for (const { name, passed, failed, seconds } of results)
  console.log(row([name, passed, failed, seconds.toFixed(1)]));
console.log('Types, lint, format, nothing unused and build count as one check each.');
const sum = (/** @type {'passed' | 'failed'} */ what) =>
  results.reduce((total, result) => total + result[what], 0);
const summary = `${sum('passed')} passed, ${sum('failed')} failed`;
writeFileSync(join(reports, 'summary.txt'), `${summary}\n`);
console.log(summary);
process.exitCode = sum('failed') === 0 ? 0 : 1;
