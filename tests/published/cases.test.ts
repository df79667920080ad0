import { expect, test } from 'vitest';
import par from './par/cases.json' with { type: 'json' };
import radiation from './radiation/cases.json' with { type: 'json' };
import sky from './sky/cases.json' with { type: 'json' };
import sun from './sun/cases.json' with { type: 'json' };

// A guards the tests; B is a sanity band or a figure quoted from memory. Each folder's own test answers every one of its cases.
test('the published cases of sun, radiation, photons and sky are complete: 58 that guard and 6 beside them', () => {
  const count = (cases: readonly { strength: string }[], strength: string): number =>
    cases.filter((c) => c.strength === strength).length;
  expect([sun, radiation, par, sky].map((cases) => count(cases, 'A'))).toEqual([18, 26, 3, 11]);
  expect([sun, radiation, par, sky].map((cases) => count(cases, 'B'))).toEqual([1, 2, 2, 1]);
});

test('every published case names its source and what sets its tolerance', () => {
  for (const c of [...sun, ...radiation, ...par, ...sky]) {
    expect(c.source.length, `source of ${c.id}`).toBeGreaterThan(5);
    expect(c.toleranceFloor.length, `tolerance of ${c.id}`).toBeGreaterThan(5);
  }
});
