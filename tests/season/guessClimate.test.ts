import { describe, expect, it } from 'vitest';
import { dayLengthH, dayOrbit } from '../../src/season/extraterrestrial.ts';
import { type ClimateKind, guessClimate } from '../../src/season/guessClimate.ts';

const kinds: readonly ClimateKind[] = ['maritime', 'continental', 'mediterranean', 'humid subtropical'];

describe('a guessed climate', () => {
  it.each(kinds)('is marked as a guess and holds figures that can be, from pole to pole: %s', (kind) => {
    for (let latitude = -90; latitude <= 90; latitude += 7.5) {
      const { source, meanC, minC, sunshineH } = guessClimate(latitude, kind);
      expect(source).toBe('guess');
      for (const [m, mean] of meanC.entries()) {
        expect(mean).toBeGreaterThan(-30);
        expect(mean).toBeLessThan(36);
        expect(minC[m]).toBeLessThan(mean);
        const dayH = dayLengthH(dayOrbit(latitude, 30 * m + 15).sunsetRad);
        expect(sunshineH[m]).toBeGreaterThanOrEqual(0);
        expect(sunshineH[m]).toBeLessThan(0.8 * dayH + 1);
      }
    }
  });

  it.each(kinds)('has its summer half a year later in the south, as warm and as long: %s', (kind) => {
    const [north, south] = [guessClimate(43, kind), guessClimate(-43, kind)];
    const half = <T>(values: readonly T[]): T[] => [...values.slice(6), ...values.slice(0, 6)];
    expect(half(south.meanC)).toEqual(north.meanC);
    expect(north.meanC.indexOf(Math.max(...north.meanC))).toBe(6);
    half(south.sunshineH).forEach((hours, m) => {
      expect(Math.abs(hours - (north.sunshineH[m] ?? Number.NaN))).toBeLessThan(0.4);
    });
  });

  it('tells the kinds apart and grows colder towards the pole', () => {
    const range = (kind: ClimateKind): number => {
      const { meanC } = guessClimate(47, kind);
      return Math.max(...meanC) - Math.min(...meanC);
    };
    expect(range('continental')).toBeGreaterThan(1.6 * range('maritime'));
    const july = (kind: ClimateKind): number => guessClimate(40, kind).sunshineH[6];
    expect(july('mediterranean')).toBeGreaterThan(1.5 * july('maritime'));
    expect(guessClimate(52, 'maritime').meanC[0]).toBeLessThan(guessClimate(44, 'maritime').meanC[0]);
  });

  it('refuses a latitude that is none', () => {
    expect(() => guessClimate(91, 'maritime')).toThrow(/^guessClimate: .*got 91/);
    expect(() => guessClimate(Number.NaN, 'maritime')).toThrow(/^guessClimate/);
  });
});
