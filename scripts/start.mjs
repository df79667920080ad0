/**
 * Builds the page if something changed, serves it on this machine and prints the address:
 * `node scripts/start.mjs [--port N]`. Takes the next free port when that one is taken.
 */
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { preview } from 'vite';
import { buildPage } from './build.mjs';
import { root } from './fingerprint.mjs';

/** @param {string} words @param {number} code @returns {never} */
function stop(words, code) {
  console.error(words);
  process.exit(code);
}

/** @param {unknown} error */
const wordsOf = (error) => (error instanceof Error ? error.message : String(error));

function readPort() {
  try {
    return parseArgs({ options: { port: { type: 'string', default: '4173' } } }).values.port;
  } catch (error) {
    return stop(`${wordsOf(error)}. There is one option: --port N`, 2);
  }
}

const asked = readPort();
const port = Number(asked);
if (!Number.isInteger(port) || port < 1 || port > 65_535)
  stop(`--port: a whole number from 1 to 65535 is needed, got ${asked}`, 2);

console.log('Making the page ready ...');
try {
  await buildPage();
  const server = await preview({
    root,
    configFile: join(root, 'vite.config.ts'),
    logLevel: 'warn',
    preview: { port },
  });
  const address = server.resolvedUrls?.local[0];
  console.log(`Boughlight is at ${address ?? `port ${port}`}  (stop with Ctrl+C)`);
} catch (error) {
  stop(wordsOf(error), 1);
}
