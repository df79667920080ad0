/**
 * Writes the published JSON Schema of the tree file: `node scripts/makeSchema.mjs`.
 * Node 20 cannot read TypeScript, so Vite's module runner does.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));
const { module } = await runnerImport(`${root}src/document/jsonSchema.ts`, { root, configFile: false });

const target = `${root}public/${module.schemaFile}`;
await mkdir(dirname(target), { recursive: true });
await writeFile(target, module.jsonSchemaText());
console.log(`public/${module.schemaFile}`);
