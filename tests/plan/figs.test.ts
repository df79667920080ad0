import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstCropFigs } from '../../src/plan/firstCrop.ts';
import { lightCurve, lightResponse } from '../../src/plan/lightResponse.ts';
import { nodePlaces } from '../../src/plan/nodePlaces.ts';
import { ripeChance } from '../../src/plan/ripening.ts';
import { scoreCanopy } from '../../src/plan/score.ts';
import { seasonDates } from '../../src/season/seasonDates.ts';
import { axis, bud, planInput, straight, tree, trunk, values } from './smallTree.ts';
import { twoShoots } from './twoShoots.ts';

describe('lightResponse', () => {
  it('is none, half and all at its three figures, and flat outside them', () => {
    const at = (share: number): number => lightResponse(share, 0.12, 0.27, 0.45);
    expect([at(0), at(0.12), at(0.27), at(0.45), at(1)]).toEqual([0, 0, 0.5, 1, 1]);
    expect(at(0.13)).toBeLessThan(0.02);
    expect(at(0.44)).toBeGreaterThan(0.98);
  });

  it('never falls as light rises', () => {
    const share = fc.double({ min: 0, max: 1.1, noNaN: true });
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(lightResponse(low, 0.12, 0.27, 0.45)).toBeLessThanOrEqual(
          lightResponse(high, 0.12, 0.27, 0.45),
        );
      }),
    );
  });

  it('refuses figures out of order', () => {
    expect(() => lightCurve({ ...values, fruitNoneBelowFraction: 0.3 })).toThrow(/must rise, got 0.3, 0.27/);
  });
});

describe('ripeChance', () => {
  const { site } = planInput(tree(trunk()));
  const season = seasonDates({ site, budBreakOn: '2026-03-29', values, ripening: 'mid' });
  const chance = ripeChance(values, 'mid', season);

  it('falls from node to node and is a half where the heat just suffices', () => {
    const end = season.heat.sumAt(season.ripeningEndsOn);
    const evenNode = 1 + (end - values.firstRipeMidHeatGdd8) / values.phyllochronGdd8;
    expect(chance(evenNode)).toBeCloseTo(0.5, 9);
    for (let node = 2; node < 20; node++) expect(chance(node)).toBeLessThan(chance(node - 1));
  });

  it('has the spread of years it is given: one in six seasons ends a spread early', () => {
    const end = season.heat.sumAt(season.ripeningEndsOn);
    const node =
      1 + (end - values.seasonEndSpreadGdd8 - values.firstRipeMidHeatGdd8) / values.phyllochronGdd8;
    // A logistic holds 0.8598 below one standard deviation, the normal 0.841.
    expect(chance(node)).toBeCloseTo(0.8598, 3);
  });

  it('falls by so much heat as figs are late', () => {
    expect(chance(3, values.phyllochronGdd8)).toBeCloseTo(chance(4), 12);
  });

  it('is higher for early kinds than for late ones', () => {
    expect(ripeChance(values, 'early', season)(6)).toBeGreaterThan(ripeChance(values, 'late', season)(6));
  });
});

describe('firstCropFigs', () => {
  const buds = Array.from({ length: 7 }, (_, i) => bud(`b${i}`, 0.1 + 0.05 * i));
  const wood = tree(trunk(), axis('last', 'trunk', { atM: 0.5, path: straight(0.42, 80, 40), buds }));
  const figs = (keptToM: number | null, of = wood): number =>
    firstCropFigs(of, () => true, new Map(keptToM === null ? [] : [['last', keptToM]]), 2026, values);

  it('counts the last nodes of last year and no others', () => {
    expect(figs(null)).toBeCloseTo(5 * 0.4, 9);
  });

  it('loses the nodes beyond a tip cut and makes no new ones below', () => {
    expect(figs(0.33)).toBeCloseTo(3 * 0.4, 9);
    expect(figs(0.19)).toBe(0);
  });

  it('counts the shoots that grew from nodes, too, so that a tree in leaf carries as many', () => {
    const shoots = buds.map((b) =>
      axis(`${b.id}-shoot`, 'last', {
        atM: b.atM,
        grownIn: 2026,
        foliage: { count: 5, midribM: 0.1, source: 'measured' },
      }),
    );
    const inLeaf = tree(
      trunk(),
      axis('last', 'trunk', { atM: 0.5, path: straight(0.42, 80, 40) }),
      ...shoots,
    );
    expect(figs(null, inLeaf)).toBeCloseTo(figs(null), 9);
  });

  it('finds none on old, dead or fallen wood', () => {
    const old = tree(trunk(), axis('last', 'trunk', { grownIn: 2021, buds }));
    const dead = tree(trunk(), axis('last', 'trunk', { condition: 'dead', buds }));
    expect([figs(null, old), figs(null, dead)]).toEqual([0, 0]);
    expect(firstCropFigs(wood, (id) => id !== 'last', new Map(), 2026, values)).toBe(0);
  });
});

describe('scoreCanopy', () => {
  const canopy = twoShoots([3, 3]);
  const places = nodePlaces(canopy);
  const nodeLight = [0.9, 0.5, 0.27, 0.1, 0.1, 0.14];
  const score = (keep: readonly number[]) =>
    scoreCanopy({
      canopy,
      places,
      nodeLight,
      keep: Uint8Array.from(keep),
      crop: { set: 7, ripe: 5 },
      firstCropFigs: 3,
      values,
    });

  it('measures the wood between nodes in fruiting light, and counts shoots in deep shade', () => {
    const both = score([1, 1, 1]);
    expect(both.fruitingWoodM).toBeCloseTo(0.21, 9);
    expect(both.deepShadeCount).toBe(1);
    expect(both.meanLight).toBeCloseTo((1.67 / 3 + 0.34 / 3) / 2, 9);
    expect(both.leafAreaM2).toBeCloseTo(0.42, 9);
  });

  it('counts only what is kept', () => {
    const one = score([1, 0, 1]);
    expect([one.shootCount, one.deepShadeCount, one.firstCropFigs]).toEqual([1, 1, 3]);
    expect([one.ripeFigs, one.figsSet]).toEqual([5, 7]);
    expect(one.fruitingWoodM).toBe(0);
  });

  it('refuses light for another number of nodes', () => {
    const crop = { set: 0, ripe: 0 };
    const short = {
      canopy,
      places,
      nodeLight: [1],
      keep: Uint8Array.of(1, 1, 1),
      crop,
      firstCropFigs: 0,
      values,
    };
    expect(() => scoreCanopy(short)).toThrow(/6 nodes, got 1/);
  });
});
