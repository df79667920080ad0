#!/usr/bin/env node
/** The headless command. Installs and builds what is missing or out of date, then runs it. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root } from '../scripts/fingerprint.mjs';

async function makeReady() {
  const { setUp } = await import('../scripts/setup.mjs');
  setUp('start', true);
  const { buildCommand } = await import('../scripts/build.mjs');
  await buildCommand('error');
}

/** A package that carries the built command but not its sources has nothing to build. */
const fromSources = existsSync(join(root, 'src', 'cli', 'main.ts'));

try {
  if (fromSources) await makeReady();
} catch (error) {
  console.error(
    `boughlight: could not be made ready. ${error instanceof Error ? error.message : String(error)}`,
  );
  process.exit(1);
}
await import(pathToFileURL(join(root, 'dist', 'cli', 'boughlight.mjs')).href);
