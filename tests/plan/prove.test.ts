import { describe, expect, it } from 'vitest';
import { Bounds, type Domains, type PartedProblem } from '../../src/plan/bound.ts';
import { prove } from '../../src/plan/prove.ts';
import { searchKeepSet } from '../../src/plan/search.ts';
import { crowdedProblem, leafyProblem } from './crowded.ts';
import { drain } from './smallTree.ts';

/** Worth of every set, by flipping one member at a time and scoring it whole. */
function valuesOfAll(problem: PartedProblem): Map<string, number> {
  const kept = new Uint8Array(problem.count).fill(1);
  const values = new Map([[kept.join(''), problem.value()]]);
  for (let n = 1; n < 2 ** problem.count; n++) {
    const member = 31 - Math.clz32(n & -n);
    problem.flip(member);
    kept[member] = 1 - (kept[member] as number);
    values.set(kept.join(''), problem.value());
  }
  return values;
}

/** Whether a set of all members is one of those that the domains leave open. */
const isIn = (bounds: Bounds, domains: Domains, kept: string): boolean =>
  bounds.groups.every((group, g) =>
    domains[g]?.includes(group.reduce((set, member, bit) => set | (Number(kept[member]) << bit), 0)),
  );

const problemSize = (bounds: Bounds): number => bounds.groups.flat().length;

const trees: readonly (readonly [string, () => PartedProblem])[] = [
  ['in open ground', () => crowdedProblem(10, 211)],
  ['with many shoots a limb', () => crowdedProblem(10, 212, { perLimb: 5 })],
  ['in a small pot', () => crowdedProblem(10, 213, { potVolumeL: 11 })],
  ['in a very small pot', () => crowdedProblem(10, 214, { potVolumeL: 3, perLimb: 5 })],
  ['with pins', () => crowdedProblem(11, 215, { pinned: ['b-0-1'], settled: ['b-2-0'], potVolumeL: 23 })],
  ['in leaf', () => leafyProblem(10, 216)],
];

describe.each(trees)('the bound on a crowded tree %s', (_name, make) => {
  const values = valuesOfAll(make());
  const best = Math.max(...values.values());

  it.each([2, 3, 5])('is passed by no set, in groups of %i', (size) => {
    const bounds = new Bounds(make(), size);
    expect(bounds.bound(bounds.tables(bounds.whole()))).toBeGreaterThanOrEqual(best - 1e-6);
  });

  it('is passed by no set beside any set of the first group', () => {
    const bounds = new Bounds(make(), 3);
    for (const set of bounds.whole()[0] as readonly number[]) {
      const domains = bounds.whole().map((sets, g) => (g === 0 ? [set] : sets));
      bounds.settle(domains);
      const beside = [...values].flatMap(([kept, value]) => (isIn(bounds, domains, kept) ? [value] : []));
      expect(beside).toHaveLength(2 ** (problemSize(bounds) - (bounds.groups[0]?.length ?? 0)));
      expect(bounds.bound(bounds.tables(domains))).toBeGreaterThanOrEqual(Math.max(...beside) - 1e-6);
    }
  });

  it.each([2, 4])('takes out no set that is worth what is looked for, in groups of %i', (size) => {
    const bounds = new Bounds(make(), size);
    // Sets down to the tenth best have to stay, whatever of them is decided on the way.
    const wanted = [...values.values()].sort((a, b) => b - a)[9] as number;
    const good = [...values].flatMap(([kept, value]) => (value >= wanted ? [kept] : []));
    let domains = bounds.whole();
    for (let pass = 0; pass < 4; pass++) {
      bounds.settle(domains);
      domains = bounds.narrowed(wanted - 1e-6, bounds.tables(domains), domains);
      expect(good.filter((kept) => !isIn(bounds, domains, kept))).toEqual([]);
    }
    const sets = (of: Domains): number => of.reduce((sum, some) => sum + some.length, 0);
    expect(sets(domains)).toBeLessThan(sets(bounds.whole()));
  });

  it('comes down to the best of all sets, which is met from a bad one', () => {
    const problem = make();
    const bad = { kept: new Uint8Array(problem.count).fill(1), value: problem.value() };
    const proof = drain(prove(problem, bad, 100_000, 3));
    expect(proof.value).toBeCloseTo(best, 6);
    expect(proof.bound - proof.value).toBeLessThan(1e-6);
    expect(problem.value()).toBeCloseTo(best, 6);
  });
});

describe('prove', () => {
  it.each([
    [221, {}],
    [222, { potVolumeL: 17 }],
    [223, { perLimb: 6, potVolumeL: 29 }],
  ])('finds nothing better than the search on 18 buds, seed %i', { timeout: 120_000 }, (seed, given) => {
    const problem = crowdedProblem(18, seed, given);
    const found = drain(searchKeepSet(problem));
    const proof = drain(prove(problem, found, 400_000, 4));
    expect(proof.value).toBeCloseTo(found.value, 6);
    expect(proof.bound - proof.value).toBeLessThan(1e-6);
  });

  it('gives a wider bound where the budget is spent', () => {
    const problem = crowdedProblem(12, 224, { perLimb: 4 });
    const found = drain(searchKeepSet(problem));
    const [none, some] = [0, 300].map((budget) => drain(prove(problem, found, budget, 3)));
    expect(none?.bound).toBeGreaterThan(found.value + 0.01);
    expect(some?.bound).toBeLessThanOrEqual(none?.bound as number);
    expect(some?.bound).toBeGreaterThanOrEqual(found.value);
  });
});
