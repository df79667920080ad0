/** Fingerprints of files, so that work already done is not done again. Plain Node, no packages. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the project. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/**
 * All files at and below the paths, sorted; paths that do not exist are passed over.
 * @param {string[]} paths relative to the project
 * @returns {string[]}
 */
export function filesUnder(paths) {
  /** @type {string[]} */
  const found = [];
  const walk = (/** @type {string} */ path) => {
    if (!existsSync(path)) return;
    if (!statSync(path).isDirectory()) found.push(path);
    else for (const name of readdirSync(path)) if (!name.startsWith('.')) walk(join(path, name));
  };
  for (const path of paths) walk(join(root, path));
  return found.sort();
}

/**
 * One hash over the names and contents of the files, the platform and the major version of Node.
 * @param {string[]} paths relative to the project
 * @param {(path: string) => boolean} [counts] whether a file counts, by its path in the project with forward slashes
 */
export function fingerprint(paths, counts = () => true) {
  const hash = createHash('sha256').update(
    `${process.platform} ${process.arch} ${process.versions.node.split('.')[0]}\n`,
  );
  for (const file of filesUnder(paths)) {
    const name = relative(root, file).replaceAll('\\', '/');
    if (counts(name)) hash.update(`${name}\n`).update(readFileSync(file)).update('\n');
  }
  return hash.digest('hex');
}

/**
 * What a stamp file says; empty when there is none.
 * @param {string} file
 */
export const readStamp = (file) => (existsSync(file) ? readFileSync(file, 'utf8').trim() : '');
