/**
 * Installs what is missing, and nothing when nothing changed: `node scripts/setup.mjs [start|all]`.
 * `start` asks for what the page and the command need, `all` also for what the tests need; an install
 * for `all` serves both. Plain Node, no packages.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, lstatSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fingerprint, readStamp, root } from './fingerprint.mjs';

const modules = join(root, 'node_modules');
const stamp = join(modules, '.boughlight-stamp');

/** An install empties the folder first; behind a link that folder is another checkout's. */
function checkFolder() {
  if (lstatSync(modules, { throwIfNoEntry: false })?.isSymbolicLink() !== true) return;
  throw new Error(
    'node_modules is a link to a folder elsewhere, which an install would empty. Remove the link and start again.',
  );
}

function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  throw new Error(
    `Boughlight needs Node 20.19 or newer, this is ${process.versions.node}. See https://nodejs.org`,
  );
}

/**
 * Runs npm, the one that runs this script if there is one.
 * @param {string[]} args
 * @param {'inherit' | 'pipe'} output where what npm says goes
 */
function npm(args, output) {
  const own = process.env.npm_execpath;
  /** @type {import('node:child_process').StdioOptions} */
  const stdio = ['ignore', output, output];
  const done =
    own?.endsWith('.js') === true
      ? spawnSync(process.execPath, [own, ...args], { cwd: root, stdio })
      : spawnSync('npm', args, { cwd: root, stdio, shell: process.platform === 'win32' });
  if (done.status === 0) return;
  const said = [done.stdout, done.stderr].filter(Boolean).map(String).join('\n').trim();
  throw new Error(`npm ${args.join(' ')} failed. Is the network there?${said === '' ? '' : `\n${said}`}`);
}

/** Whoever installed all by hand keeps all. */
function hasTestPackages() {
  return existsSync(join(modules, 'vitest', 'package.json'));
}

/**
 * @param {'start' | 'all'} need
 * @param {boolean} quiet leave standard output alone: one line on standard error, and what npm says only if it fails
 */
export function setUp(need, quiet = false) {
  checkNode();
  const now = fingerprint(['package-lock.json']);
  const before = readStamp(stamp);
  if (before === `all ${now}` || before === `${need} ${now}`) return;
  checkFolder();
  const kind = before.startsWith('all ') || hasTestPackages() ? 'all' : need;
  (quiet ? console.error : console.log)('Installing packages (once, and again when they change) ...');
  const args = ['ci', '--ignore-scripts', '--prefer-offline', '--no-audit', '--no-fund'];
  npm(kind === 'all' ? args : [...args, '--omit=dev'], quiet ? 'pipe' : 'inherit');
  writeFileSync(stamp, `${kind} ${now}\n`);
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  try {
    setUp(process.argv[2] === 'all' ? 'all' : 'start');
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    process.exit(1);
  }
}
