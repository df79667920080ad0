import { assert, double, property } from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  blindNodes,
  internodeM,
  leafExpansion,
  leavesAt,
  nodesAlong,
  shootForm,
  vigourOfInternode,
} from '../../src/growth/shootForm.ts';
import { figValues } from '../../src/species/fig.ts';

const values = figValues({});
const vigours = double({ min: values.vigourLowest, max: values.vigourHighest, noNaN: true });

describe('a shoot by its vigour', () => {
  it('has the internodes of a weak, a balanced and an over-vigorous shoot at their vigour', () => {
    expect(internodeM(values.vigourWeak, values)).toBeCloseTo(0.015, 12);
    expect(internodeM(1, values)).toBeCloseTo(0.055, 12);
    expect(internodeM(values.vigourStrong, values)).toBeCloseTo(0.1, 12);
  });

  it('gives the vigour back from the internode (seed 4101)', () => {
    const sameBack = (v: number) => {
      expect(vigourOfInternode(internodeM(v, values), values)).toBeCloseTo(v, 9);
    };
    assert(property(vigours, sameBack), { seed: 4101 });
  });

  it('is longer, thicker and leafier the stronger it is (seed 4102)', () => {
    assert(
      property(vigours, vigours, (a, b) => {
        const [weak, strong] = [Math.min(a, b), Math.max(a, b)].map((v) => shootForm(v, 1700, values));
        if (weak === undefined || strong === undefined) throw new Error('two shoots are compared');
        expect(weak.leafCount).toBeLessThanOrEqual(strong.leafCount);
        expect(weak.lengthM).toBeLessThanOrEqual(strong.lengthM);
        expect(weak.baseDiameterM).toBeLessThanOrEqual(strong.baseDiameterM);
      }),
      { seed: 4102 },
    );
  });

  it('stays between 12 and 125 cm and 6 and 24 leaves in autumn, whatever its vigour', () => {
    const weakest = shootForm(values.vigourLowest, 2500, values);
    const strongest = shootForm(values.vigourHighest, 2500, values);
    expect(weakest.lengthM).toBeGreaterThan(0.12);
    expect(weakest.leafCount).toBeGreaterThanOrEqual(6);
    expect(strongest.lengthM).toBeLessThan(1.25);
    expect(strongest.leafCount).toBeLessThanOrEqual(24);
  });
});

describe('a shoot by the heat it has had', () => {
  it('has no leaf before leaf-out, one at leaf-out and one more each phyllochron', () => {
    expect(leavesAt(44.9, 12, values)).toBe(0);
    expect(leavesAt(45, 12, values)).toBe(1);
    expect(leavesAt(45 + 3 * 75 - 0.1, 12, values)).toBe(3);
    expect(leavesAt(45 + 3 * 75, 12, values)).toBe(4);
    expect(leavesAt(9999, 12, values)).toBe(12);
    expect(shootForm(1, 20, values)).toMatchObject({ leafCount: 0, lengthM: 0, baseDiameterM: 0 });
  });

  it('never shrinks, and keeps its nodes in order (seed 4103)', () => {
    const heat = double({ min: 0, max: 2600, noNaN: true });
    assert(
      property(vigours, heat, heat, (v, a, b) => {
        const early = shootForm(v, Math.min(a, b), values);
        const late = shootForm(v, Math.max(a, b), values);
        expect(early.lengthM).toBeLessThanOrEqual(late.lengthM);
        expect(late.nodesM).toEqual(late.nodesM.toSorted((x, y) => x - y));
        early.nodesM.forEach((m, i) => expect(m).toBeLessThanOrEqual(late.nodesM[i] ?? Number.NaN));
      }),
      { seed: 4103 },
    );
  });

  it('unfolds leaves at 0.3 of their length and has them full-grown after the published heat', () => {
    expect(leafExpansion(3, 45 + 2 * 75, values)).toBeCloseTo(0.3, 12);
    expect(leafExpansion(3, 45 + 2 * 75 + 140, values)).toBeCloseTo(0.65, 12);
    expect(leafExpansion(3, 45 + 2 * 75 + 281, values)).toBe(1);
  });
});

describe('nodesAlong', () => {
  it('ends at the tip, with internodes short at base and tip', () => {
    const nodes = nodesAlong(13, 0.61);
    const internodes = nodes.map((m, i) => m - (nodes[i - 1] ?? 0));
    expect(nodes.at(-1)).toBeCloseTo(0.61, 12);
    expect(internodes[0]).toBeLessThan(0.5 * (internodes[6] ?? 0));
    expect(internodes[12]).toBeLessThan(0.5 * (internodes[6] ?? 0));
  });
});

describe('blindNodes', () => {
  const shoot = { baseDiameterM: 0.017, internodeM: 0.055, leafCount: 11 };

  it('are two on a balanced shoot and four on one too thick or with long internodes', () => {
    expect(blindNodes(shoot, values)).toBe(2);
    expect(blindNodes({ ...shoot, baseDiameterM: 0.0232 }, values)).toBe(4);
    expect(blindNodes({ ...shoot, internodeM: 0.081 }, values)).toBe(4);
  });

  it('are never more than the shoot has', () => {
    expect(blindNodes({ ...shoot, leafCount: 1 }, values)).toBe(1);
  });
});
