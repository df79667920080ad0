import { describe, expect, it } from 'vitest';
import { harvestByWeek, peakWeek } from '../../../src/plan/harvest.ts';
import { type Pinch, pinchHeatGdd8, ripeningFigs } from '../../../src/plan/pinch.ts';
import { daysBetween } from '../../../src/season/calendar.ts';
import { firstRipeHeatGdd8, seasonDates } from '../../../src/season/seasonDates.ts';
import type { Climate } from '../../../src/season/site.ts';
import { figValues } from '../../../src/species/fig.ts';

/** Hiroshima, means of 1991 to 2020, from memory; true to about half a degree, which moves dates by less than three days. */
const climate: Climate = {
  source: 'published',
  meanC: [5.4, 6.2, 9.5, 14.8, 19.6, 23.2, 27.2, 28.5, 24.7, 18.8, 12.9, 7.5],
  minC: [2, 2.4, 5.3, 10.3, 15.2, 19.6, 24, 25.1, 21.1, 14.7, 8.7, 4],
  sunshineH: [4.4, 5, 5.7, 6.5, 6.8, 5.4, 5.8, 6.6, 5.7, 6, 5, 4.5],
};
// The trial counted about 12 figs on 12 nodes: none of its nodes was blind.
const values = figValues({ blindBasalNodes: 0 });
const budBreakOn = '1999-04-05';
const frost = { lastOfSpring: '03-20', firstOfAutumn: '12-05' };
const season = seasonDates({ site: { climate, frost }, budBreakOn, values, ripening: 'mid' });
const figToRipeGdd8 = firstRipeHeatGdd8(values, 'mid') - values.firstFigHeatGdd8;

/** Figs by week on a shoot of 12 nodes, of which those above the pinch sit on one lateral. */
function harvest(atLeaf: number | null) {
  const nodes = Array.from({ length: 12 }, (_, i) => ({ node: i + 1, bearing: i + 1, leaves: 12, figs: 1 }));
  const pinch: Pinch | null = atLeaf === null ? null : { atLeaf, laterals: 'keep one' };
  const crop = { held: Number.POSITIVE_INFINITY, lateAtTwiceGdd8: values.overloadLateGdd8 };
  const breakGdd8 = values.lateralBreakDays * 17;
  const weeks = harvestByWeek(
    ripeningFigs(nodes, pinch, { values, crop, figToRipeGdd8, breakGdd8 }),
    season,
    values,
  );
  return { peakFrom: peakWeek(weeks) as string, figs: weeks.reduce((sum, week) => sum + week.figs, 0) };
}

describe('early pinching (Hiroshima Agricultural Technology Center 1999: 4, 8 and 12 nodes, one lateral kept, 12 nodes in all)', () => {
  const [at4, at8, whole] = [harvest(4), harvest(8), harvest(null)];
  const forwardWeeks = (of: typeof at4): number => daysBetween(of.peakFrom, whole.peakFrom) / 7;

  it('leaves about as many figs, some 12 a shoot', () => {
    for (const { figs } of [at4, at8, whole]) {
      // "About equal": within one fig.
      expect(Math.abs(figs - 12)).toBeLessThan(1);
    }
  });

  it('brings the peak forward, by more the lower the pinch', () => {
    expect(forwardWeeks(at4)).toBeGreaterThan(forwardWeeks(at8));
    // Published at 8 nodes: late August to mid-September for early to mid-September, 0.5 to 2.5 weeks.
    expect(forwardWeeks(at8)).toBeGreaterThanOrEqual(0.5);
    expect(forwardWeeks(at8)).toBeLessThanOrEqual(2.5);
  });

  it('brings it forward by the three to four weeks published at 4 nodes', () => {
    // The one thing chosen by this trial: figs below a pinch do not wait for first figs (see pinch.ts). Weeks are whole ones.
    expect(forwardWeeks(at4)).toBeGreaterThanOrEqual(3);
    expect(forwardWeeks(at4)).toBeLessThanOrEqual(4);
  });
});

it('ripens figs set by a pinch 70 to 90 days later in summer warmth (common practice, no source)', () => {
  // Kinds of middle season, pinched above leaf 7 to 10, June to mid-July at a mean of 21 to 24.
  const meanC: Climate['meanC'] = [6.3, 7.4, 10.6, 13.3, 17.4, 21.6, 24.3, 23.8, 19.9, 15.7, 10.4, 7.1];
  const site = { climate: { ...climate, meanC }, frost };
  const { heat } = seasonDates({ site, budBreakOn, values, ripening: 'mid' });
  for (const atLeaf of [7, 8, 9]) {
    const setAt = pinchHeatGdd8(atLeaf, values);
    const days = daysBetween(heat.dateAt(setAt) as string, heat.dateAt(setAt + figToRipeGdd8) as string);
    expect(days, `leaf ${atLeaf}`).toBeGreaterThan(70);
    expect(days, `leaf ${atLeaf}`).toBeLessThan(90);
  }
});
