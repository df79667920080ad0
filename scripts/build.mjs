/**
 * Builds what changed since the last build: the fast lattice into src/light/trace/generated, the page to dist/page, the headless command to
 * dist/cli/boughlight.mjs. `node scripts/build.mjs`; other scripts call the two functions.
 */
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fingerprint, readStamp, root } from './fingerprint.mjs';

const dist = join(root, 'dist');
const recipe = ['package-lock.json', 'scripts/build.mjs', 'scripts/headers.mjs'];

/**
 * Runs a build unless its stamp shows that nothing changed.
 * @param {string} name
 * @param {string} print
 * @param {() => Promise<void>} build
 * @returns {Promise<boolean>} whether there was something to do
 */
async function whenChanged(name, print, build) {
  const stamp = join(dist, `${name}.stamp`);
  if (readStamp(stamp) === print) return false;
  await build();
  mkdirSync(dist, { recursive: true });
  writeFileSync(stamp, `${print}\n`);
  return true;
}

/** The fast lattice, which the other two builds take from the sources. */
function buildWasm() {
  const print = fingerprint(['assembly', 'src/light/trace/generated', 'scripts/makeWasm.mjs', ...recipe]);
  return whenChanged('wasm', print, async () => {
    const { makeWasm } = await import('./makeWasm.mjs');
    await makeWasm();
  });
}

/** @param {'warn' | 'error'} logLevel what of the builder's talk is shown */
export function buildPage(logLevel = 'warn') {
  const print = fingerprint(
    ['index.html', 'vite.config.ts', 'public', 'src', ...recipe],
    (name) => !name.startsWith('src/cli/') && !name.endsWith('.md'),
  );
  return whenChanged('page', print, async () => {
    const vite = await import('vite');
    await vite.build({ root, logLevel, configFile: join(root, 'vite.config.ts') });
  });
}

/** @param {'warn' | 'error'} logLevel what of the builder's talk is shown */
export function buildCommand(logLevel = 'warn') {
  const print = fingerprint(
    ['src', 'package.json', ...recipe],
    (name) => !/^src\/(ui|editor)\//.test(name) && !name.endsWith('.md'),
  );
  return whenChanged('command', print, async () => {
    const vite = await import('vite');
    // Built aside and moved into place whole: a second command may be running.
    const aside = join(dist, `cli.${process.pid}`);
    try {
      await vite.build({
        root,
        logLevel,
        configFile: false,
        publicDir: false,
        ssr: { noExternal: true },
        build: {
          ssr: 'src/cli/main.ts',
          outDir: aside,
          target: 'node20',
          minify: false,
          rolldownOptions: { output: { entryFileNames: 'boughlight.mjs', codeSplitting: false } },
        },
      });
      mkdirSync(join(dist, 'cli'), { recursive: true });
      renameSync(join(aside, 'boughlight.mjs'), join(dist, 'cli', 'boughlight.mjs'));
    } finally {
      rmSync(aside, { recursive: true, force: true });
    }
  });
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  try {
    await buildWasm();
    const [page, command] = [await buildPage(), await buildCommand()];
    console.log(`Page: ${page ? 'built' : 'unchanged'}. Command: ${command ? 'built' : 'unchanged'}.`);
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    process.exit(1);
  }
}
