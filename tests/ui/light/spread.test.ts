import { describe, expect, it } from 'vitest';
import { meanLight, spreadByHeight, spreadByLight } from '../../../src/engine/spread.ts';
import { random01 } from '../../../src/geometry/random.ts';
import type { ShootRow } from '../../../src/ui/sheets/light/figures.ts';
import { spreadWords } from '../../../src/ui/sheets/light/spreadWords.ts';
import { heightsIn, isSameSpotlight, spotlitShoots } from '../../../src/ui/state/spotlight.ts';

const row = (id: string, lightFraction: number): ShootRow => ({
  id,
  name: id,
  lightFraction,
  standardError: null,
  parMolM2: 7,
  leafLightFraction: null,
  all: null,
});
const ids = (rows: readonly ShootRow[]) => rows.map(({ id }) => id).join('');

describe('the spread over shares of open sky', () => {
  it('counts tenths from none to the brightest, limits in the upper one, empty ones too', () => {
    const bands = spreadByLight([row('a', 0.07), row('b', 0.3), row('c', 0.29999), row('d', 0.41)]);
    expect(bands.map(({ rows }) => ids(rows))).toEqual(['a', '', 'c', 'b', 'd']);
    expect(bands[4]).toMatchObject({ from: 0.4, to: 0.5 });
  });

  it('puts more light than open sky into the last tenth, which has no upper end', () => {
    const last = spreadByLight([row('a', 1.07), row('b', 0.93)]).at(-1);
    expect(last).toMatchObject({ from: 0.9, to: Number.POSITIVE_INFINITY });
    expect(last?.rows).toHaveLength(2);
  });

  it('is nothing without shoots', () => {
    expect(spreadByLight([])).toEqual([]);
  });

  it('finds the very shoots of every bar on the stage (seed 41)', () => {
    const rows = Array.from({ length: 60 }, (_, i) => row(`s${i}`, Math.round(110 * random01(41, i)) / 100));
    const lightOf = new Map(rows.map(({ id, lightFraction }) => [id, lightFraction]));
    for (const { from, to, rows: inBand } of spreadByLight(rows)) {
      const found = spotlitShoots({ by: 'light', from, to }, lightOf, new Map());
      expect([...found].sort()).toEqual(inBand.map(({ id }) => id).sort());
    }
  });
});

describe('the spread over heights', () => {
  const rows = [row('a', 0.1), row('b', 0.2), row('c', 0.5), row('d', 0.9)];
  const heights = new Map([
    ['a', 0.71],
    ['b', 0.79],
    ['c', 1.31],
    ['d', 2.4],
  ]);

  it('goes from the top down in bands that read well, the empty ones included', () => {
    const bands = spreadByHeight(rows, heights, 'metric');
    expect(bands.map(({ from }) => Math.round(from * 10) / 10)).toEqual([2, 1.5, 1, 0.5]);
    expect(bands.map((band) => ids(band.rows))).toEqual(['d', '', 'c', 'ab']);
    expect(spreadWords.heights(0.5, 1, 'metric')).toBe('0.5 to 1.0 m');
  });

  it('goes by feet for those who use them', () => {
    const bands = spreadByHeight(rows, heights, 'us');
    expect(bands.map(({ from }) => Math.round((from / 0.3048) * 10) / 10)).toEqual([7, 6, 5, 4, 3, 2]);
    expect(spreadWords.heights(0.6096, 0.9144, 'us')).toBe('2.0 to 3.0 ft');
  });

  it('has at most eight bands from a hand to a tall tree', () => {
    for (const highM of [0.3, 0.9, 2.1, 7.7, 29]) {
      const tall = new Map([...heights].map(([id, m]) => [id, (m * highM) / 2.4]));
      expect(spreadByHeight(rows, tall, 'metric').length).toBeLessThanOrEqual(8);
      expect(spreadByHeight(rows, tall, 'us').flatMap((band) => band.rows)).toHaveLength(4);
    }
  });

  it('leaves out a shoot whose height is not known', () => {
    const known = new Map([['c', 1.31]]);
    expect(spreadByHeight(rows, known, 'metric').map((band) => ids(band.rows))).toEqual(['c']);
    expect(spreadByHeight(rows, new Map(), 'metric')).toEqual([]);
  });

  it('tells the mean light of a band, and none of an empty one', () => {
    expect(meanLight([row('a', 0.1), row('b', 0.4)])).toBeCloseTo(0.25, 12);
    expect(meanLight([])).toBeNull();
    expect(spreadWords.mean(null)).toBe('');
  });
});

describe('a spotlight', () => {
  it('is the same when it asks for the same', () => {
    const spot = { by: 'light', from: 0.1, to: 0.2 } as const;
    expect(isSameSpotlight({ ...spot }, spot)).toBe(true);
    expect(isSameSpotlight({ ...spot, by: 'height' }, spot)).toBe(false);
    expect(isSameSpotlight({ ...spot, to: 0.3 }, spot)).toBe(false);
    expect(isSameSpotlight(null, spot)).toBe(false);
  });

  it('falls on heights with the lower limit in and the upper out', () => {
    const heights = heightsIn([
      { id: 'a', heightM: 0.5 },
      { id: 'b', heightM: 1 },
      { id: 'c', heightM: 0.99 },
    ]);
    const found = spotlitShoots({ by: 'height', from: 0.5, to: 1 }, new Map(), heights);
    expect([...found]).toEqual(['a', 'c']);
  });
});
