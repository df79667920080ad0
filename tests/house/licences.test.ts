import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from './source.ts';

/** Licences that let the page be given to anybody, with their notice kept. */
const free = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  '0BSD',
  'OFL-1.1',
  'MPL-2.0',
  '(MIT OR Apache-2.0)',
];

/** Packages that carry a licence file and no licence field; each was read. */
const read: Readonly<Record<string, string>> = { suncalc: 'BSD-2-Clause', 'webgl-constants': 'MIT' };

describe('the packages that reach the grower', () => {
  const lock = JSON.parse(readFileSync(join(projectFolder, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { license?: string; dev?: boolean }>;
  };
  const entries = Object.entries(lock.packages)
    .filter(([path, { dev }]) => path !== '' && dev !== true)
    .map(([path, { license }]) => {
      const name = path.replace(/^.*node_modules\//, '');
      return { name, license: license ?? read[name] ?? 'none' };
    });

  it('have a licence that lets us pass them on', () => {
    expect(entries.length).toBeGreaterThan(20);
    expect(entries.filter(({ license }) => !free.includes(license))).toEqual([]);
  });
});
