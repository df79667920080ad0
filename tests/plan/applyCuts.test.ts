import { describe, expect, it } from 'vitest';
import { pathLengthM } from '../../src/geometry/path.ts';
import { applyCuts } from '../../src/plan/applyCuts.ts';
import { axis, bud, limb, straight, tree, trunk } from './smallTree.ts';

const whole = tree(
  trunk(),
  limb('east', 90, { buds: [bud('e1', 0.31), bud('e2', 0.57)] }),
  axis('low', 'east', { atM: 0.23 }),
  axis('high', 'east', { atM: 0.61, path: straight(0.37, 70, 51), buds: [bud('h1', 0.2)] }),
  axis('higher', 'high', { atM: 0.17 }),
);
const before = JSON.stringify(whole);
const idsAfter = (...cuts: Parameters<typeof applyCuts>[1]): string[] =>
  applyCuts(whole, cuts).axes.map(({ id }) => id);

describe('applyCuts', () => {
  it('takes an axis off with everything that grew from it', () => {
    expect(idsAfter({ kind: 'remove', target: 'high', atM: 0 })).toEqual(['trunk', 'east', 'low']);
  });

  it('shortens an axis and drops the buds and branches beyond the cut', () => {
    const after = applyCuts(whole, [{ kind: 'remove', target: 'east', atM: 0.44 }]);
    expect(after.axes.map(({ id }) => id)).toEqual(['trunk', 'east', 'low']);
    const east = after.axes[1];
    expect(pathLengthM(east?.path ?? [])).toBeCloseTo(0.44, 9);
    expect(east?.buds.map(({ id }) => id)).toEqual(['e1']);
    expect(east?.tipDiameterM).toBeCloseTo(0.029 + ((0.014 - 0.029) * 0.44) / 0.83, 9);
  });

  it('rubs off a bud and nothing else', () => {
    const after = applyCuts(whole, [{ kind: 'rub off bud', target: 'e1', atM: 0 }]);
    expect(after.axes[1]?.buds.map(({ id }) => id)).toEqual(['e2']);
    expect(after.axes).toHaveLength(5);
  });

  it('leaves the tree it was given as it was', () => {
    applyCuts(whole, [
      { kind: 'remove', target: 'high', atM: 0 },
      { kind: 'tip', target: 'east', atM: 0.77 },
      { kind: 'rub off bud', target: 'e2', atM: 0 },
    ]);
    expect(JSON.stringify(whole)).toBe(before);
  });

  it('gives the same tree whatever the order of the cuts', () => {
    const cuts = [
      { kind: 'tip', target: 'east', atM: 0.71 },
      { kind: 'remove', target: 'low', atM: 0 },
      { kind: 'remove', target: 'east', atM: 0.65 },
      { kind: 'rub off bud', target: 'h1', atM: 0 },
    ] as const;
    expect(applyCuts(whole, cuts)).toEqual(applyCuts(whole, [...cuts].reverse()));
  });

  it('takes the leaves beyond a cut in proportion', () => {
    const leafy = tree(
      trunk(),
      limb('east', 90, { foliage: { count: 12, midribM: 0.17, source: 'measured' } }),
    );
    const after = applyCuts(leafy, [{ kind: 'tip', target: 'east', atM: 0.83 * 0.75 }]);
    expect(after.axes[1]?.foliage?.count).toBe(9);
  });

  it('refuses ids the tree does not have, cuts before the base, and taking the trunk', () => {
    expect(() => idsAfter({ kind: 'remove', target: 'nowhere', atM: 0 })).toThrow(/no axis .* got nowhere/);
    expect(() => idsAfter({ kind: 'rub off bud', target: 'east', atM: 0 })).toThrow(/no bud .* got east/);
    expect(() => idsAfter({ kind: 'tip', target: 'east', atM: Number.NaN })).toThrow(/got NaN/);
    expect(() => idsAfter({ kind: 'remove', target: 'trunk', atM: 0 })).toThrow(/trunk cannot go whole/);
  });
});
