import { describe, expect, it } from 'vitest';
import { hashText, random01, randomNormal } from '../../src/geometry/random.ts';

const many = (n: number, f: (i: number) => number) => Array.from({ length: n }, (_, i) => f(i));
const mean = (xs: readonly number[]) => xs.reduce((a, b) => a + b, 0) / xs.length;

describe('counter-based random numbers', () => {
  it('depends on the seed and on every word, and on nothing else', () => {
    expect(random01(7, 1, 2)).toBe(random01(7, 1, 2));
    const all = [
      random01(7, 1, 2),
      random01(8, 1, 2),
      random01(7, 2, 1),
      random01(7, 1),
      random01(7, 1, 2, 0),
    ];
    expect(new Set(all).size).toBe(all.length);
  });

  it('fills ten bins evenly (chi-squared, 9 degrees of freedom, below its 99.9 % point 27.9; seed 3)', () => {
    const bins = new Array<number>(10).fill(0);
    for (let i = 0; i < 20_000; i++) {
      const bin = Math.floor(random01(3, i) * 10);
      bins[bin] = (bins[bin] as number) + 1;
    }
    const chi2 = bins.reduce((sum, n) => sum + (n - 2000) ** 2 / 2000, 0);
    expect(chi2).toBeLessThan(27.9);
  });

  it('gives neighbours in the counter no likeness (seed 5)', () => {
    const xs = many(20_000, (i) => random01(5, i) - 0.5);
    const lagged = mean(xs.slice(1).map((x, i) => x * (xs[i] as number))) / (1 / 12);
    expect(Math.abs(lagged)).toBeLessThan(4 / Math.sqrt(20_000));
  });

  it('gives normal deviates of mean 0 and deviation 1 (seed 9)', () => {
    const xs = many(20_000, (i) => randomNormal(9, i));
    expect(Math.abs(mean(xs))).toBeLessThan(4 / Math.sqrt(20_000));
    expect(mean(xs.map((x) => x * x))).toBeCloseTo(1, 1);
  });

  it('tells ids apart', () => {
    expect(new Set(many(5000, (i) => hashText(`bud-${i}`))).size).toBe(5000);
  });
});
