import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectFolder } from '../house/source.ts';
import { accuracyParts } from './accuracy.ts';
import canopy from './canopy/cases.json' with { type: 'json' };
import { closed } from './closed/answers.ts';
import leafoptics from './leafoptics/cases.json' with { type: 'json' };
import par from './par/cases.json' with { type: 'json' };
import radiation from './radiation/cases.json' with { type: 'json' };
import sampling from './sampling/cases.json' with { type: 'json' };
import sky from './sky/cases.json' with { type: 'json' };
import sun from './sun/cases.json' with { type: 'json' };
import viewfactors from './viewfactors/cases.json' with { type: 'json' };

const tables = [sun, radiation, par, sky, viewfactors, canopy, leafoptics, closed.cases, sampling];

// A guards the tests; B is a sanity band or a figure quoted from memory. Each folder's own test answers every one of its cases.
test('the published cases are complete: 100 that guard and 14 beside them', () => {
  const count = (cases: readonly { strength: string }[], strength: string): number =>
    cases.filter((c) => c.strength === strength).length;
  expect(tables.map((cases) => count(cases, 'A'))).toEqual([18, 26, 3, 11, 8, 7, 1, 24, 2]);
  expect(tables.map((cases) => count(cases, 'B'))).toEqual([1, 3, 6, 1, 0, 3, 0, 0, 0]);
});

test('every published case names its inputs, its source and what sets its tolerance', () => {
  for (const c of tables.flat()) {
    expect(c.inputs, `inputs of ${c.id}`).toBeTypeOf('object');
    expect(c.source.length, `source of ${c.id}`).toBeGreaterThan(5);
    expect(c.toleranceFloor.length, `tolerance of ${c.id}`).toBeGreaterThan(5);
  }
});

// That each row is as our code has it now is part of the test of its case.
test('the page of accuracy has every case once, under its title, and nothing else', () => {
  const lines = readFileSync(join(projectFolder, 'docs', 'accuracy.md'), 'utf8').split('\n');
  const quantities = lines
    .filter((line) => /^\| (?!quantity)/.test(line))
    .map((line) => line.split(' | ')[0]);
  const expected = accuracyParts.flatMap(({ cases, bands }) => [...cases, ...bands]);
  expect(quantities).toEqual(expected.map(({ quantity }) => `| ${quantity}`));
  expect(expected).toHaveLength(tables.flat().length);
  expect(lines.filter((line) => line.startsWith('## '))).toEqual(
    accuracyParts.map(({ title }) => `## ${title}`),
  );
});
