import { describe, expect, it } from 'vitest';
import { figForms } from '../../src/species/fig/forms.ts';
import { figGrowth } from '../../src/species/fig/growth.ts';
import { figLeaf } from '../../src/species/fig/leaf.ts';
import { figLeafOutline } from '../../src/species/fig/leafOutline.ts';
import { figLight } from '../../src/species/fig/light.ts';
import { figPlan } from '../../src/species/fig/plan.ts';
import { figSeason } from '../../src/species/fig/season.ts';
import { figShoot } from '../../src/species/fig/shoot.ts';
import { figVigour } from '../../src/species/fig/vigour.ts';
import { figParameters, figValues } from '../../src/species/fig.ts';
import type { Parameter } from '../../src/species/parameter.ts';

const all: Record<string, Parameter> = { ...figParameters, ...figForms };

describe('the figures of the fig', () => {
  it.each(Object.entries(all))('%s lies in its own range and says where it comes from', (_, figure) => {
    expect(figure.value).toBeGreaterThanOrEqual(figure.min);
    expect(figure.value).toBeLessThanOrEqual(figure.max);
    expect(figure.source.length).toBeGreaterThan(8);
    // A bare key such as "S05" tells a reader nothing.
    expect(figure.source).not.toMatch(/\b[A-Z]\d\d\b/);
    expect(figure.adjustable && figure.max === figure.min).toBe(false);
  });

  it('are each named in one room only, so that none hides another', () => {
    const names = [figSeason, figGrowth, figLight, figPlan].flatMap((room) => Object.keys(room));
    expect(names.toSorted()).toEqual([...new Set(names)].toSorted());
    const ofGrowth = [figShoot, figVigour, figLeaf].flatMap((part) => Object.keys(part));
    expect(ofGrowth.toSorted()).toEqual(Object.keys(figGrowth).toSorted());
  });

  it('take the settings of the grower and leave the rest alone', () => {
    const values = figValues({ leafMidribCm: 17.3 });
    expect(values.leafMidribCm).toBe(17.3);
    expect(values.petioleCm).toBe(figGrowth.petioleCm.value);
  });

  it('refuse a setting that is unknown, fixed or out of range', () => {
    expect(() => figValues({ leafColour: 3 })).toThrow(
      'figValues: no adjustable figure is called leafColour',
    );
    expect(() => figValues({ toString: 3 })).toThrow('no adjustable figure');
    expect(() => figValues({ leafAreaExponent: 1.5451 })).toThrow('no adjustable figure');
    expect(() => figValues({ leafMidribCm: 31.7 })).toThrow('leafMidribCm must be 10 to 30 cm, got 31.7');
    expect(() => figValues({ leafMidribCm: Number.NaN })).toThrow('got NaN');
  });
});

describe('the outline of a fig leaf', () => {
  const next = (i: number) => figLeafOutline[(i + 1) % figLeafOutline.length] ?? [0, 0];

  it('shows its whole edge to the petiole, so that a fan of triangles fills it', () => {
    expect(figLeafOutline.length).toBeGreaterThan(30);
    figLeafOutline.forEach(([u, v], i) => {
      const [u2, v2] = next(i);
      expect(u * v2 - v * u2).toBeGreaterThan(0);
    });
  });

  it('goes round the petiole once', () => {
    const turned = figLeafOutline.reduce((sum, [u, v], i) => {
      const [u2, v2] = next(i);
      return sum + Math.atan2(u * v2 - v * u2, u * u2 + v * v2);
    }, 0);
    expect(turned).toBeCloseTo(2 * Math.PI, 9);
  });

  it('has its tip at 1 along the midrib, five lobes, and two like halves', () => {
    const reach = figLeafOutline.map(([u, v]) => Math.hypot(u, v));
    expect(Math.max(...figLeafOutline.map(([u]) => u))).toBe(1);
    const at = (i: number) => reach[(i + reach.length) % reach.length] ?? 0;
    const lobes = reach.filter((r, i) => {
      const before = [1, 2].map((k) => at(i - k));
      const after = [1, 2].map((k) => at(i + k));
      return r > Math.max(...before) && r >= Math.max(...after);
    });
    expect(lobes).toHaveLength(5);
    for (const [u, v] of figLeafOutline) {
      expect(figLeafOutline.some(([a, b]) => Math.hypot(a - u, b + v) < 1e-12)).toBe(true);
    }
  });
});
