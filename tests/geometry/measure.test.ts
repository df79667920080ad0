import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatArea,
  formatDecimal,
  formatLength,
  metresPer,
  parseDecimal,
  parseLength,
} from '../../src/geometry/measure.ts';

describe('formatLength', () => {
  it.each([
    [0.0083, '8 mm', '5/16 in'],
    [0.034, '3.4 cm', '1 5/16 in'],
    [0.07, '7 cm', '2 3/4 in'],
    [0.343, '34 cm', '13 1/2 in'],
    [0.9949, '99 cm', '3 ft 3 in'],
    [1.2537, '1.25 m', '4 ft 1 in'],
    [0, '0 mm', '0 in'],
    [-0.343, '-34 cm', '-13 1/2 in'],
  ])('writes %d m as %s and %s', (lengthM, metric, us) => {
    expect(formatLength(lengthM, 'metric')).toBe(metric);
    expect(formatLength(lengthM, 'us')).toBe(us);
  });

  it('rounds what was typed, not what a sum of stretches made of it', () => {
    expect(formatLength(0.315 - 1e-15, 'metric')).toBe('32 cm');
    expect(formatLength(0.314999, 'metric')).toBe('31 cm');
  });

  it('refuses what is no number', () => {
    expect(() => formatLength(Number.NaN, 'us')).toThrow(/got NaN/);
  });

  /** Half of the last step that is written, metres. */
  const halfStepM = (m: number, units: 'metric' | 'us'): number => {
    if (units === 'metric') return m < 0.0995 ? 0.0005 : 0.005;
    const inches = m / 0.0254;
    const steps: [number, number][] = [
      [2, 1 / 16],
      [4, 1 / 8],
      [12, 1 / 4],
      [35.5, 1 / 2],
    ];
    return (0.0254 * (steps.find(([below]) => inches < below)?.[1] ?? 1)) / 2;
  };

  it('can be read back within half of its last step, 4.8 % at most, in either units (seed 7101)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.03, max: 30, noNaN: true }),
        fc.constantFrom('metric' as const, 'us' as const),
        (m, units) => {
          const text = formatLength(m, units);
          const plain = text.replace(/(\d+) (\d+)\/(\d+) in$|^(\d+)\/(\d+) in$/, (_, a, b, c, d, e) =>
            a === undefined ? `${Number(d) / Number(e)} in` : `${Number(a) + Number(b) / Number(c)} in`,
          );
          const back = parseLength(plain, 'm');
          expect(back, text).not.toBeNull();
          expect(Math.abs((back as number) - m), text).toBeLessThan(halfStepM(m, units) + 1e-9);
          expect(Math.abs((back as number) - m) / m, text).toBeLessThan(0.048);
        },
      ),
      { seed: 7101, numRuns: 2000 },
    );
  });
});

describe('formatArea and formatDecimal', () => {
  it('choose the unit by size', () => {
    expect(formatArea(0.0295, 'metric')).toBe('295 cm²');
    expect(formatArea(1.837, 'metric')).toBe('1.84 m²');
    expect(formatArea(0.0295, 'us')).toBe('45.7 sq in');
    expect(formatArea(1.837, 'us')).toBe('19.8 sq ft');
  });

  it('never write a minus before zero', () => {
    expect(formatDecimal(-0.04, 1)).toBe('0.0');
    expect(formatDecimal(-1.26, 1)).toBe('-1.3');
  });
});

describe('parseLength', () => {
  it.each([
    ['34 cm', 0.34],
    ['34', 0.34],
    ['1,5 m', 1.5],
    ['.5m', 0.5],
    ['13 in', 0.3302],
    ['1\'6"', 0.4572],
    ['4 ft 1 in', 1.2446],
    ['4ft', 1.2192],
    ['7″', 0.1778],
    ['12 mm', 0.012],
    ['\u22123', -0.03],
  ])('reads %s', (text, lengthM) => {
    expect(parseLength(text, 'cm')).toBeCloseTo(lengthM, 9);
  });

  it.each(['', 'cm', 'twelve', '1.2.3', '1e5', '3 lengths'])('does not read "%s"', (text) => {
    expect(parseLength(text, 'cm')).toBeNull();
  });

  it('takes comma and point alike', () => {
    expect(parseDecimal('1,25')).toBe(1.25);
    expect(parseDecimal('1.25')).toBe(1.25);
    expect(parseDecimal('1,250.5')).toBeNull();
    expect(metresPer.ft).toBeCloseTo(0.3048, 12);
  });
});
