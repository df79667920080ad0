/**
 * Writes the sample trees to public/examples: `node scripts/makeExamples.mjs`.
 * Node 20 cannot read TypeScript, so Vite's module runner does.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));
/** @param {string} path */
const load = async (path) => (await runnerImport(`${root}${path}`, { root, configFile: false })).module;

const { makeSamples } = await load('scripts/examples/samples.ts');
const { writeTreeFile } = await load('src/document/writeTreeFile.ts');

await mkdir(`${root}public/examples`, { recursive: true });
for (const make of makeSamples) {
  const file = make();
  await writeFile(`${root}public/examples/${file.id}.json`, writeTreeFile(file));
  console.log(`public/examples/${file.id}.json`);
}
