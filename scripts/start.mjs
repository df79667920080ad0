/**
 * Builds the page if something changed, serves it on this machine and prints the address:
 * `node scripts/start.mjs [--port N]`. Takes the next free port when that one is taken.
 */
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { preview } from 'vite';
import { buildPage } from './build.mjs';
import { root } from './fingerprint.mjs';

const { values } = parseArgs({ options: { port: { type: 'string', default: '4173' } } });
const port = Number(values.port);
if (!Number.isInteger(port) || port < 1 || port > 65_535) {
  console.error(`--port: a whole number from 1 to 65535 is needed, got ${values.port}`);
  process.exit(2);
}

console.log('Making the page ready ...');
try {
  await buildPage();
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exit(1);
}
const server = await preview({
  root,
  configFile: join(root, 'vite.config.ts'),
  logLevel: 'warn',
  preview: { port },
});
const address = server.resolvedUrls?.local[0];
console.log(`Boughlight is at ${address ?? `port ${port}`}  (stop with Ctrl+C)`);
