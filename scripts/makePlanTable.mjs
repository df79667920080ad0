/** Writes docs/plans.md, each sample's plan beside what else might be done: `npm run plans`. Takes some minutes. */
import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));
const { module } = await runnerImport(`${root}scripts/plans/page.ts`, { root, configFile: false });
await writeFile(
  `${root}docs/plans.md`,
  module.plansPage((/** @type {string} */ name) => console.log(name)),
);
console.log('docs/plans.md');
