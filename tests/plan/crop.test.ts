import { describe, expect, it } from 'vitest';
import { CropCount, type CropModel, figsHeldInPot, keptAtLoad } from '../../src/plan/crop.ts';
import { figSites, siteLight } from '../../src/plan/figSites.ts';
import { lightCurve } from '../../src/plan/lightResponse.ts';
import type { LightStage } from '../../src/plan/stages.ts';
import { values } from './smallTree.ts';
import { twoShoots } from './twoShoots.ts';

const stage = (name: LightStage['name'], fromGdd8: number, toGdd8: number): LightStage => ({
  name,
  heatGdd8: (fromGdd8 + toGdd8) / 2,
  period: { from: '2026-05-01', to: '2026-06-01' },
  fromGdd8,
  toGdd8,
});

/** A first fig at 465, one more every 75, ripe 1000 later; so the second hangs from 540 to 1540. */
const early = { stage: stage('full leaf', 40, 640), canopy: twoShoots([2, 3]) };
const late = { stage: stage('last useful fig', 640, 1840), canopy: twoShoots([3, 4]) };
const sites = figSites([early, late], values, 1000, (bearing) => (bearing > 2 ? 0 : 1 / bearing));

describe('figSites', () => {
  it('are the bearing nodes of the last canopy that can ripen', () => {
    expect([...sites.owner]).toEqual([1, 1, 2, 2]);
    expect([...sites.bearing]).toEqual([1, 2, 1, 2]);
  });

  it('live in the stages by the heat spent in each, and where a node is not yet there in the later alone', () => {
    const inFirst = (640 - 465) / 1000;
    expect(sites.weight[0]).toBeCloseTo(inFirst, 12);
    expect(sites.weight[4]).toBeCloseTo(1 - inFirst, 12);
    // Node 3 of the first shoot and node 4 of the second unfold after the first canopy.
    expect([sites.weight[1], sites.weight[3]]).toEqual([0, 0]);
    expect([sites.weight[5], sites.weight[7]]).toEqual([1, 1]);
    expect([...sites.node]).toEqual([1, -1, 4, -1, 1, 2, 5, 6]);
  });

  it('take the mean light of their stages', () => {
    const light = siteLight(
      sites,
      [
        [0, 0.4, 0, 0, 0],
        [0, 0.2, 0, 0, 0, 0, 0],
      ],
      0,
    );
    expect(light).toBeCloseTo(0.175 * 0.4 + 0.825 * 0.2, 12);
  });
});

describe('CropCount', () => {
  const model: CropModel = {
    response: lightCurve(values),
    setInFullLight: 0.8,
    ripeAt: (bearing, lateGdd8) => Math.max(0, 1 / bearing - lateGdd8 / 1000),
    held: Number.POSITIVE_INFINITY,
    lateAtTwiceGdd8: 200,
  };
  const bright = [new Float64Array(5).fill(0.9), new Float64Array(7).fill(0.9)];
  const keep = Uint8Array.of(1, 1, 1);
  const count = (rest: Partial<CropModel>, standing = keep) =>
    new CropCount(sites, bright, standing, { ...model, ...rest });

  it('adds figs node by node: fewer in the dark, fewer that ripen late', () => {
    expect(count({}).count()).toEqual({ set: 4 * 0.8, ripe: 2 * 0.8 + 2 * 0.8 * 0.5 });
    const dim = bright.map((light) => light.map(() => 0.27));
    expect(new CropCount(sites, dim, keep, model).count().set).toBeCloseTo(4 * 0.4, 12);
  });

  it('counts only what stands', () => {
    expect(count({}, Uint8Array.of(1, 1, 0)).count().set).toBeCloseTo(2 * 0.8, 12);
  });

  it('ripens fewer figs, and later, of more than the roots can feed', () => {
    const held = 1.6;
    const { set, ripe } = count({ held }).count();
    expect(set).toBeCloseTo(3.2, 12);
    expect(ripe).toBeCloseTo((2 * 0.8 * 0.8 + 2 * 0.8 * 0.3) * keptAtLoad(2), 12);
    expect(ripe).toBeLessThan(held);
  });

  it('tells what share ripens at a bearing node beside a crop of that size', () => {
    const crop = count({ held: 1.6 });
    const { set, ripe } = crop.count();
    const shares = crop.ripeShares(set);
    const bearing = [...sites.bearing];
    expect(bearing.reduce((sum, b, site) => sum + crop.setAt(site) * (shares[b] ?? 0), 0)).toBeCloseTo(
      ripe,
      12,
    );
  });
});

describe('what a pot feeds', () => {
  it('is what growers report from 38 to 57 litres, and 43 % more in twice the pot', () => {
    expect(figsHeldInPot(47, values)).toBe(50);
    expect(figsHeldInPot(94, values) / 50).toBeCloseTo(1.43, 2);
  });

  it('is neared from below: nearly all of a light crop is kept, a seventh of a full one is lost', () => {
    expect(keptAtLoad(0.3)).toBeGreaterThan(0.99);
    expect(keptAtLoad(1)).toBeCloseTo(0.84, 2);
    expect(5 * keptAtLoad(5)).toBeCloseTo(1, 3);
  });
});
