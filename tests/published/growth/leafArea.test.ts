/**
 * Source: leaf area of fig from linear leaf measures, Ciencia Rural 44(7), 2014: A = 2.879 C^1.5451, C the
 * midrib in cm, A in cm2. The areas are the equation's, printed to whole cm2: rounding sets the tolerance
 * (0.5 cm2 of 101 is 0.5 %), held at 1 %.
 */
import { describe, expect, it } from 'vitest';
import { growCanopy } from '../../../src/growth/growCanopy.ts';
import { leafAreaM2 } from '../../../src/growth/leafArea.ts';
import { figValues } from '../../../src/species/fig.ts';
import { axis } from '../../growth/figTree.ts';

const published = [
  [10, 101],
  [15, 189],
  [18, 250],
  [20, 295],
  [22, 342],
  [25, 416],
  [28, 496],
  [30, 551],
] as const;

describe('area of a fig leaf from its midrib', () => {
  it.each(published)('%d cm gives %d cm2', (midribCm, areaCm2) => {
    expect(Math.abs((leafAreaM2(midribCm / 100, figValues({})) * 1e4) / areaCm2 - 1)).toBeLessThan(0.01);
  });

  it.each(published)('a blade drawn with a midrib of %d cm covers %d cm2', (midribCm, areaCm2) => {
    const shoot = axis(
      {
        id: 'shoot',
        kind: 'trunk',
        parentId: null,
        atM: 0,
        bearing: 40,
        elevation: 80,
        lengthM: 0.3,
        baseM: 0.01,
        tipM: 0.006,
        buds: 0,
      },
      { foliage: { count: 1, midribM: midribCm / 100, source: 'measured' } },
    );
    const canopy = growCanopy({
      tree: { axes: [shoot] },
      stance: { foot: [0, 0, 0], turnedDeg: 0 },
      values: figValues({}),
      heatGdd8: 0,
      seed: 1,
      gone: new Set(),
    });
    const [leaf] = canopy.leaves;
    if (leaf === undefined) throw new Error('the shoot has a leaf');
    const corners = canopy.outline.map(([u, v]) => [u * leaf.midribM, v * leaf.acrossScaleM] as const);
    const twice = corners.reduce((sum, [u, v], i) => {
      const [u2, v2] = corners[(i + 1) % corners.length] ?? [0, 0];
      return sum + u * v2 - v * u2;
    }, 0);
    expect(Math.abs(((twice / 2) * 1e4) / areaCm2 - 1)).toBeLessThan(0.01);
    expect(Math.max(...corners.map(([u]) => u))).toBeCloseTo(midribCm / 100, 12);
  });

  it('refuses a midrib that is not above 0', () => {
    expect(() => leafAreaM2(0, figValues({}))).toThrow('leafAreaM2: the midrib must be above 0 m, got 0');
    expect(() => leafAreaM2(Number.NaN, figValues({}))).toThrow('got NaN');
  });
});
