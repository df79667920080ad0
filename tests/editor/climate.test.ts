import { describe, expect, it } from 'vitest';
import type { Edited } from '../../src/editor/edit.ts';
import {
  changeFrost,
  changeSource,
  guessWeather,
  type Months,
  tellSunBy,
  typeMonths,
} from '../../src/editor/edits/climate.ts';
import { smallTree } from './smallTree.ts';

function made(edited: Edited) {
  if (!edited.ok) throw new Error(`refused: ${edited.reason}`);
  return edited.file;
}

const { climate } = smallTree.site;
const months = (first: number, step: number): Months =>
  climate.meanC.map((_, m) => Math.round(10 * (first + step * m)) / 10) as Months;
const hourly = {
  source: 'station.epw',
  globalWM2: climate.meanC.map(() => Array.from({ length: 24 }, (_, h) => (h > 6 && h < 18 ? 300 : 0))),
  diffuseWM2: climate.meanC.map(() => Array.from({ length: 24 }, (_, h) => (h > 6 && h < 18 ? 130 : 0))),
};
const withHours = { ...smallTree, site: { ...smallTree.site, climate: { ...climate, hourly } } };

describe('weather typed month by month', () => {
  it('holds what was typed and no longer calls itself a guess', () => {
    const guessed = made(guessWeather(smallTree, 'maritime'));
    const typed = made(typeMonths(guessed, { meanC: months(8.3, 0.7) })).site.climate;
    expect(typed.meanC).toEqual(months(8.3, 0.7));
    expect(guessed.site.climate.source).toBe('guess');
    expect(typed.source).toBe('measured');
  });

  it('lets the nights follow when a colder day is typed first', () => {
    const colder = climate.meanC.with(4, climate.minC[4] - 3) as Months;
    const after = made(typeMonths(smallTree, { meanC: colder })).site.climate;
    const apart = climate.meanC[4] - climate.minC[4];
    expect(after.meanC[4] - after.minC[4]).toBeCloseTo(apart, 9);
    expect(after.minC.with(4, 0)).toEqual(climate.minC.with(4, 0));
  });

  it('refuses nights warmer than their days', () => {
    const warmer = climate.minC.with(6, climate.meanC[6] + 1) as Months;
    expect(typeMonths(smallTree, { minC: warmer })).toMatchObject({ ok: false });
  });

  it('refuses what no month can have', () => {
    expect(typeMonths(smallTree, { sunshineH: months(20, 1) })).toEqual({
      ok: false,
      reason: 'That cannot be used: the largest value is 24.',
    });
    expect(typeMonths(smallTree, { meanC: months(Number.NaN, 1) }).ok).toBe(false);
  });

  it('keeps the hours of a weather file until the sun itself is typed', () => {
    expect(made(typeMonths(withHours, { minC: months(-9.5, 0.1) })).site.climate.hourly).toEqual(hourly);
    const typed = made(typeMonths(withHours, { clearness: months(0.4, 0) })).site.climate;
    expect(typed.hourly).toBeUndefined();
    expect(typed.sunshineH).toBeUndefined();
    expect(typed.clearness).toEqual(months(0.4, 0));
  });
});

describe('the sun told by its hours or by the clearness', () => {
  it('comes back as it was, within what is rounded', () => {
    const clear = made(tellSunBy(smallTree, 'clearness'));
    expect(clear.site.climate.sunshineH).toBeUndefined();
    const back = made(tellSunBy(clear, 'sunshineH')).site.climate;
    expect(back.clearness).toBeUndefined();
    const firstGuess = made(guessWeather(smallTree, 'maritime'));
    const again = made(tellSunBy(made(tellSunBy(firstGuess, 'clearness')), 'sunshineH')).site.climate;
    again.sunshineH?.forEach((hours, m) => {
      // Half a hundredth of clearness is a hundredth of the day's length.
      expect(Math.abs(hours - (firstGuess.site.climate.sunshineH?.[m] ?? 0))).toBeLessThan(0.25);
    });
  });

  it('keeps the source of the figures', () => {
    expect(made(tellSunBy(smallTree, 'clearness')).site.climate.source).toBe(climate.source);
    expect(made(changeSource(smallTree, 'published')).site.climate.source).toBe('published');
  });
});

describe('the dates of frost', () => {
  it('are changed, or said not to be', () => {
    const dates = { lastOfSpring: '03-29', firstOfAutumn: '11-17' };
    expect(made(changeFrost(smallTree, dates)).site.frost).toEqual(dates);
    expect(made(changeFrost(smallTree, null)).site.frost).toBeNull();
  });
});
