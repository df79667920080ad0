import { describe, expect, it } from 'vitest';
import type { Tree } from '../../src/geometry/tree.ts';
import { type Candidate, candidatesOf, tooClose } from '../../src/plan/candidates.ts';
import { keepLimits } from '../../src/plan/limits.ts';
import { ruleContext } from '../../src/plan/ruleContext.ts';
import { figValues } from '../../src/species/fig.ts';
import { axis, bud, limb, stance, straight, tree, trunk } from './smallTree.ts';

const values = figValues({ shootsPerScaffold: 3, keptShootSpacingCm: 9 });
const candidates = (of: Tree) => candidatesOf(ruleContext(of, stance, values), 'bud break');
const limitsOf = (all: readonly Candidate[], rest = {}) =>
  keepLimits({
    candidates: all,
    values,
    leafAreaM2: all.map(() => 0),
    treeLeafAreaM2: 0,
    settledLeafAreaM2: 0,
    ...rest,
  });

const short = { path: straight(0.41, 90, 40) };
const oneLimb = tree(
  trunk({ buds: [bud('low', 0.31), bud('high', 0.58)] }),
  limb('east', 90, {
    ...short,
    buds: [bud('a', 0.1, 10), bud('b', 0.17, 40), bud('c', 0.18, 190), bud('d', 0.3, 20)],
  }),
);

describe('candidatesOf', () => {
  it('marks buds on the trunk below the lowest limb', () => {
    const marked = candidates(oneLimb).filter(({ belowFork }) => belowFork !== null);
    expect(marked.map(({ id }) => id)).toEqual(['low']);
  });

  it('marks the low buds of a whip that has enough higher up to make a crown', () => {
    const heights = [0.12, 0.3, 0.44, 0.47, 0.53, 0.6];
    const whip = (atMs: readonly number[]) =>
      candidates(tree(trunk({ buds: atMs.map((m) => bud(`b${m}`, m)) })));
    expect(whip(heights).filter(({ belowFork }) => belowFork !== null)).toHaveLength(3);
    expect(whip(heights.slice(0, 5)).filter(({ belowFork }) => belowFork !== null)).toHaveLength(0);
  });

  it('offers nothing in rest, no bud of dead wood, and shoots only once they are in leaf', () => {
    const leafy = axis('s', 'east', {
      kind: 'shoot',
      atM: 0.2,
      foliage: { count: 8, midribM: 0.15, source: 'measured' },
    });
    const of = tree(
      trunk(),
      limb('east', 90),
      axis('x', 'east', { condition: 'dead', buds: [bud('xb', 0.1)] }),
      leafy,
    );
    const at = (stage: 'rest' | 'bud break' | 'in leaf') =>
      candidatesOf(ruleContext(of, stance, values), stage).map(({ id, kind }) => `${kind} ${id}`);
    expect([at('rest'), at('bud break'), at('in leaf')]).toEqual([[], [], ['remove s']]);
  });

  it('lets a large limb hold one shoot for every 25 cm of its wood', () => {
    const of = tree(
      trunk(),
      limb('east', 90, { path: straight(1.31, 90, 30), buds: [bud('a', 0.5)] }),
      axis('side', 'east', { atM: 0.6, path: straight(0.72, 10, 30) }),
    );
    expect(candidates(of)[0]?.limbHolds).toBe(8);
    expect(candidates(oneLimb).find(({ id }) => id === 'a')?.limbHolds).toBe(3);
  });
});

describe('tooClose', () => {
  it('counts only the same side of the same branch', () => {
    const by = new Map(candidates(oneLimb).map((one) => [one.id, one]));
    const close = (a: string, b: string) => tooClose(by.get(a) as Candidate, by.get(b) as Candidate, 0.09);
    expect([close('a', 'b'), close('b', 'c'), close('b', 'd'), close('a', 'a')]).toEqual([
      true,
      false,
      false,
      true,
    ]);
  });
});

describe('keepLimits', () => {
  const all = candidates(oneLimb).filter(({ on }) => on.parent !== null);

  it('finds the limb too full, pairs too close and bare branches', () => {
    const limits = limitsOf(all);
    expect(limits.breaches([1, 1, 1, 1])).toEqual({
      shareOver: 0,
      bareBranches: 0,
      bareBases: 0,
      leadingBudsGone: 0,
      leadingShootsGone: 0,
      overFull: 1,
      tooClosePairs: 1,
    });
    expect(limits.breaches([1, 0, 1, 1])).toEqual({
      shareOver: 0,
      bareBranches: 0,
      bareBases: 0,
      leadingBudsGone: 0,
      leadingShootsGone: 0,
      overFull: 0,
      tooClosePairs: 0,
    });
    expect(limits.breaches([0, 0, 0, 0]).bareBranches).toBe(1);
    expect(limits.penalty([1, 0, 1, 1])).toBe(0);
  });

  it('keeps one shoot near the base of a limb, before its room and its outermost bud', () => {
    // The limb is 41 cm long: its lower two fifths end at 16.4 cm, between a and b.
    expect(all.map(({ id, renews }) => [id, renews])).toEqual([
      ['a', true],
      ['b', false],
      ['c', false],
      ['d', false],
    ]);
    const limits = limitsOf(all);
    expect(limits.breaches([0, 1, 1, 1]).bareBases).toBe(1);
    expect(limits.breaches([1, 0, 0, 1]).bareBases).toBe(0);
    // Four on a limb that holds three, with a pair too close, costs less than a bare base.
    expect(limits.penalty([1, 1, 1, 1])).toBeLessThan(limits.penalty([0, 1, 1, 1]));
  });

  it('takes a shoot on a lateral for one at the place where the lateral leaves the limb', () => {
    const of = tree(
      trunk(),
      limb('east', 90),
      axis('side', 'east', { atM: 0.31, path: straight(0.72, 10, 30), buds: [bud('far', 0.61)] }),
      axis('out', 'east', { atM: 0.37, path: straight(0.42, 150, 30), buds: [bud('near', 0.07)] }),
    );
    const found = candidates(of).map(({ id, renews }) => [id, renews]);
    expect(found).toEqual([
      ['far', true],
      ['near', false],
    ]);
  });

  it('holds the leaves taken within the share of a year, settled cuts counted in', () => {
    const limits = limitsOf(all, {
      leafAreaM2: [0.1, 0.2, 0.3, 0.4],
      treeLeafAreaM2: 2,
      settledLeafAreaM2: 0.5,
    });
    expect(limits.breaches([0, 1, 1, 1]).shareOver).toBe(0);
    expect(limits.breaches([0, 0, 1, 1]).shareOver).toBeCloseTo(0.4 - 0.33, 9);
  });

  it('keeps the outermost bud of each branch, after the limits of the limb', () => {
    expect(all.map(({ id, leads }) => [id, leads])).toEqual([
      ['a', false],
      ['b', false],
      ['c', false],
      ['d', true],
    ]);
    const limits = limitsOf(all);
    expect(limits.breaches([1, 0, 1, 0]).leadingBudsGone).toBe(1);
    expect(limits.penalty([1, 0, 1, 0])).toBeGreaterThan(50);
    expect(limits.penalty([1, 0, 1, 0])).toBeLessThan(limits.penalty([1, 1, 1, 1]));
  });

  it('takes the outermost shoot in leaf only where that brings a fig more than it bears', () => {
    const leafy = (id: string, atM: number) =>
      axis(id, 'east', { kind: 'shoot', atM, foliage: { count: 9, midribM: 0.16, source: 'measured' } });
    const of = tree(trunk(), limb('east', 90), leafy('s', 0.31), leafy('t', 0.79));
    const shoots = candidatesOf(ruleContext(of, stance, values), 'in leaf');
    expect(limitsOf(shoots).penalty([0, 1])).toBe(0);
    expect(limitsOf(shoots).penalty([1, 0])).toBe(1);
  });

  it('rates leaves above bare branches and those above full limbs', () => {
    const limits = limitsOf(all, { leafAreaM2: [0.3, 0.3, 0.3, 0.3], treeLeafAreaM2: 1.2 });
    expect(limits.penalty([0, 0, 0, 0])).toBeGreaterThan(limits.penalty([1, 1, 1, 1]));
  });
});
