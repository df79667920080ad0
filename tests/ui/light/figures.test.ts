import { describe, expect, it } from 'vitest';
import type { LightReport, ShootLight } from '../../../src/engine/reports.ts';
import { countByClass, shootRows, spotOf, timesIn } from '../../../src/ui/sheets/light/figures.ts';
import { timeWords } from '../../../src/ui/sheets/light/timeWords.ts';
import { doubtPercent, lightWords, limitPercent } from '../../../src/ui/sheets/light/words.ts';
import { makeLightScale } from '../../../src/ui/theme/lightScale.ts';

const noParts = { beam: 0, sky: 0, ground: 0, transmitted: 0, scattered: 0 };

const shoot = (id: string, lightFraction: number, july: number): ShootLight => ({
  id,
  name: `Shoot ${id}`,
  lightFraction,
  standardError: 0.013,
  parMolM2Day: lightFraction * 37,
  parts: { ...noParts, beam: lightFraction },
  leafLightFraction: lightFraction / 2,
  leafParts: { ...noParts, sky: lightFraction / 2 },
  byMonth: [
    { month: 6, lightFraction: lightFraction + 0.01, parMolM2Day: 11 },
    { month: 7, lightFraction: july, parMolM2Day: 13 },
  ],
  byHour: [{ solarHour: 9, lightFraction: 0.9 * lightFraction, parMolM2: 2.7 }],
  sunHours: 13 * lightFraction,
  openSky: { solidAngle: 0.8 * lightFraction, cosine: 0.9 * lightFraction },
  heightM: 1.7,
});

const threshold = (share: number) => ({ share, source: 'made up', isSet: false });

const report: LightReport = {
  format: 'boughlight-light',
  version: 1,
  period: { from: '2030-06-03', to: '2030-07-21' },
  weather: 'normal',
  sky: 'uniform',
  solarHour: null,
  energy: { basis: 'sunshine', source: 'measured' },
  leafSeason: { from: '2030-04-20', to: '2030-10-29', daysOutside: 0 },
  parFactor: { molPerMJ: 2.018, low: 1.98, high: 2.3 },
  openSkyParMolM2Day: 37,
  dayLengthH: 15.3,
  thresholds: { deepShade: threshold(0.13), fruitingLight: threshold(0.26), saturation: threshold(0.44) },
  seed: 1,
  rays: 900,
  shoots: [shoot('a', 0.31, 0.05), shoot('b', 0.07, 0.4), shoot('c', 0.52, 0.6), shoot('d', 0.131, 0.2)],
};

describe('the table of shoots', () => {
  it('stands darkest first over the season', () => {
    expect(shootRows(report, null, null).map((row) => row.id)).toEqual(['b', 'd', 'a', 'c']);
  });

  it('shows a month at once without its doubt, and with it once it is weighed', () => {
    const july = { by: 'month', month: 7 } as const;
    const early = shootRows(report, july, null);
    expect(early.map((row) => row.id)).toEqual(['a', 'd', 'b', 'c']);
    expect(early[0]).toMatchObject({
      lightFraction: 0.05,
      parMolM2: 13,
      standardError: null,
      leafLightFraction: null,
      all: null,
    });
    const weighed = { ...report, shoots: [shoot('a', 0.05, 0.05)] };
    expect(shootRows(report, july, weighed)[0]).toMatchObject({
      lightFraction: 0.05,
      standardError: 0.013,
      all: { heightM: 1.7 },
    });
  });

  it('shows an hour of the day likewise', () => {
    const nine = { by: 'hour', solarHour: 9 } as const;
    expect(shootRows(report, nine, null)[0]).toMatchObject({ id: 'b', parMolM2: 2.7, standardError: null });
    expect(shootRows(report, { by: 'hour', solarHour: 3 }, null)).toEqual([]);
  });

  it('offers the months and the hours of the report in their order', () => {
    expect(timesIn(report, 'month')).toEqual([
      { by: 'month', month: 6 },
      { by: 'month', month: 7 },
    ]);
    expect(timesIn(report, 'hour')).toEqual([{ by: 'hour', solarHour: 9 }]);
    expect(timesIn({ ...report, shoots: [] }, 'hour')).toEqual([]);
  });

  it('does not change the report', () => {
    shootRows(report, null, null);
    expect(report.shoots.map((s) => s.id)).toEqual(['a', 'b', 'c', 'd']);
  });
});

describe('the classes of light', () => {
  it('hold every shoot once', () => {
    const scale = makeLightScale({ deepShade: 0.135, fruitingLight: 0.27, saturation: 0.45 });
    expect(countByClass(shootRows(report, null, null), scale).map((c) => c.count)).toEqual([2, 0, 1, 1]);
  });
});

describe('the spot of a class on the scale', () => {
  it('has no upper end for the brightest', () => {
    const { classes } = makeLightScale({ deepShade: 0.135, fruitingLight: 0.27, saturation: 0.45 });
    expect(classes.map(spotOf).map(({ from, to }) => [from, to])).toEqual([
      [0, 0.135],
      [0.135, 0.27],
      [0.27, 0.45],
      [0.45, Number.POSITIVE_INFINITY],
    ]);
  });
});

describe('the words of the figures', () => {
  it('say how many shoots sit in deep shade and how many of them inside', () => {
    expect(lightWords.headline(9, 52, 4, 'over the season')).toBe(
      '9 of 52 shoots sit in deep shade over the season; 4 of them inside the crown.',
    );
    expect(lightWords.headline(1, 7, 1, 'in July')).toBe(
      '1 of 7 shoots sits in deep shade in July, inside the crown.',
    );
    expect(lightWords.headline(0, 7, 0, 'in July')).toBe('None of the 7 shoots sits in deep shade in July.');
    expect(lightWords.headline(0, 0, 0, '')).toBe('No shoot carries leaves yet.');
  });

  it('keep the half of a limit and never show a doubt of nothing', () => {
    expect(limitPercent(0.135)).toBe('13.5');
    expect(limitPercent(0.27)).toBe('27');
    expect(doubtPercent(0.0002)).toBe('0.1');
    expect(doubtPercent(0.0031)).toBe('0.4');
    expect(doubtPercent(0.0231)).toBe('3');
  });
});

describe('the words of the time', () => {
  it('tell an hour by the sun and a month by its name', () => {
    expect(timeWords.inHeadline({ by: 'hour', solarHour: 9 })).toBe('from 9 to 10 h, sun time');
    expect(timeWords.inHeadline({ by: 'month', month: 7 })).toBe('in July');
    expect(timeWords.openSky(4.26, { by: 'hour', solarHour: 9 })).toContain('4.3 mol m⁻² in that hour');
    expect(timeWords.openSky(37.2, null)).toContain('37 mol m⁻² d⁻¹');
  });
});
