/** Writes docs/accuracy.md from the published cases: `npm run accuracy`. Takes about a minute. */
import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));
const { module } = await runnerImport(`${root}tests/published/accuracy.ts`, { root, configFile: false });
await writeFile(`${root}docs/accuracy.md`, module.accuracyPage());
console.log('docs/accuracy.md');
