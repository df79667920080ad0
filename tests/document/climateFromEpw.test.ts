import { describe, expect, test } from 'vitest';
import { climateFromEpw, type EpwClimate } from '../../src/document/climateFromEpw.ts';
import { cellLight } from '../../src/light/sky/cellLight.ts';
import { parMolPerMJ } from '../../src/season/par.ts';
import { type MadePlace, madeEpw } from '../season/epw/madeEpw.ts';
import { northern } from '../season/places.ts';

const inland: MadePlace = { latitudeDeg: 48.7, longitudeDeg: 2.3, zoneH: 1, years: [2003] };
const places: readonly (readonly [string, MadePlace])[] = [
  ['in the west of its zone', { ...inland, longitudeDeg: -4.1 }],
  ['five and a half hours ahead', { latitudeDeg: 26.3, longitudeDeg: 78.9, zoneH: 5.5, years: [2009] }],
  [
    'twelve and three quarters ahead, south',
    { latitudeDeg: -43.9, longitudeDeg: -176.4, zoneH: 12.75, years: [1997] },
  ],
  ['three and a half behind', { latitudeDeg: 47.3, longitudeDeg: -53.2, zoneH: -3.5, years: [2011] }],
  ['far north', { latitudeDeg: 65.4, longitudeDeg: 24.7, zoneH: 2, years: [2001] }],
  ['a leap year', { ...inland, years: [2012] }],
  [
    'months of many years',
    { ...inland, years: [1999, 2004, 2007, 2011, 2012, 2001, 1996, 2008, 2000, 2013, 2005, 1998] },
  ],
  ['carriage returns', { ...inland, lineEnd: '\r\n' }],
];
const sum = (row: readonly number[] | undefined): number => (row ?? []).reduce((a, b) => a + b, 0);

function read(text: string): EpwClimate {
  const answer = climateFromEpw(text);
  if (!answer.ok) throw new Error(`${answer.where}: ${answer.reason}`);
  return answer;
}

function hourlyOf(text: string) {
  const { hourly } = read(text).climate;
  if (!hourly) throw new Error('no hours');
  return hourly;
}

describe.each(places)('a weather file of a place %s', (_, place) => {
  const made = madeEpw(place);
  const { climate } = read(made.text);
  const hourly = hourlyOf(made.text);

  /** What two decimals in the file and in the table cost a month of polar night. */
  const roundedWhM2 = 0.005;

  test('keeps the light of every month within 0.1 %, from the sky alone too', () => {
    for (let month = 0; month < 12; month++) {
      const [global, diffuse] = [sum(made.globalWM2[month]), sum(made.diffuseWM2[month])];
      expect(Math.abs(sum(hourly.globalWM2[month]) - global)).toBeLessThan(0.001 * global + roundedWhM2);
      expect(Math.abs(sum(hourly.diffuseWM2[month]) - diffuse)).toBeLessThan(0.001 * diffuse + roundedWhM2);
    }
  });

  test('puts it into the hours of true solar time', () => {
    for (let month = 0; month < 12; month++) {
      const most = Math.max(...(made.globalWM2[month] ?? []));
      made.globalWM2[month]?.forEach((value, hour) => {
        // Within the hour of the file the light is taken to go with the sine of elevation, which costs so much.
        expect(Math.abs((hourly.globalWM2[month]?.[hour] ?? Number.NaN) - value)).toBeLessThan(
          0.02 * most + 1,
        );
      });
    }
  });

  test('gives the light of the tree that month’s sum, whatever year is asked', () => {
    const { latitudeDeg, longitudeDeg } = place;
    for (const [from, to, month] of [
      ['2027-06-01', '2027-06-30', 5],
      ['2028-02-01', '2028-02-29', 1],
      ['2026-11-01', '2026-11-30', 10],
    ] as const) {
      const site = { latitudeDeg, longitudeDeg, climate };
      const light = cellLight({ site, groundReflectance: 0.2, period: { from, to }, skyKind: 'uniform' });
      const wanted = (sum(hourly.globalWM2[month]) * 3600 * parMolPerMJ) / 1e6;
      expect(Math.abs(light.openSkyParMolM2Day / wanted - 1)).toBeLessThan(0.0001);
    }
  });

  test('has the warmth of its months', () => {
    climate.meanC.forEach((meanC, month) => {
      expect(Math.abs(meanC - (made.meanC[month] ?? Number.NaN))).toBeLessThan(0.06);
    });
    // Half the daily swing, and the steps of a day.
    climate.minC.forEach((minC, month) => {
      expect((climate.meanC[month] ?? Number.NaN) - minC).toBeGreaterThan(4.6);
      expect((climate.meanC[month] ?? Number.NaN) - minC).toBeLessThan(5.4);
    });
  });
});

describe('a weather file', () => {
  const made = madeEpw(inland);

  test('names its place, its maker and its year', () => {
    expect(hourlyOf(made.text).source).toBe('Low, and green, Made Up, XXX (invented), 2003');
    const { years } = places[6]?.[1] ?? inland;
    expect(hourlyOf(madeEpw({ ...inland, years }).text).source).toMatch(/months of years from 1996 to 2013$/);
    const nowhere = made.text.replace('"Low, and green",Made Up,XXX', 'unknown,-,Unknown');
    expect(hourlyOf(nowhere).source).toBe('Unnamed place (invented), 2003');
    expect(read(made.text).place).toMatchObject({
      latitudeDeg: 48.7,
      longitudeDeg: 2.3,
      zoneH: 1,
      elevationM: 137,
    });
  });

  test('tells its last and first frost, and that there is none', () => {
    const frosty = read(made.text).frost;
    expect(frosty?.lastOfSpring).toMatch(/^0[2-4]-/);
    expect(frosty?.firstOfAutumn).toMatch(/^1[0-2]-/);
    const warm = madeEpw({
      ...inland,
      change: (fields) => fields.with(6, String(Number(fields[6]) + 9)),
    });
    expect(read(warm.text).frost).toBeNull();
  });

  test('gives months the clearness of their light above the air', () => {
    const { climate } = read(made.text);
    const site = { ...northern, climate: { ...climate, hourly: undefined } };
    const period = { from: '2003-07-01', to: '2003-07-31' };
    const light = cellLight({ site, groundReflectance: 0.2, period, skyKind: 'uniform' });
    const wanted = (sum(made.globalWM2[6]) * 3600 * parMolPerMJ) / 1e6;
    expect(Math.abs(light.openSkyParMolM2Day / wanted - 1)).toBeLessThan(0.003);
  });

  test('is the same with the minutes written 60, with blank fields at night and with rows in another order', () => {
    const sixty = madeEpw({ ...inland, change: (fields) => fields.with(4, '60') });
    expect(read(sixty.text).climate).toEqual(read(made.text).climate);
    const blank = madeEpw({
      ...inland,
      change: (fields) =>
        Number(fields[13]) > 0 ? fields : fields.with(13, '').with(14, '9999').with(15, ' '),
    });
    expect(read(blank.text).climate).toEqual(read(made.text).climate);
    const lines = made.text.split('\n');
    const turned = [...lines.slice(0, 8), ...lines.slice(8, -1).reverse(), ''].join('\n');
    expect(read(turned).climate).toEqual(read(made.text).climate);
  });

  test('makes a missing third of the radiation from the other two', () => {
    const month = 6;
    for (const [column, value] of [
      [13, '9999'],
      [13, '-999'],
      [13, '0'],
      [15, '9999'],
    ] as const) {
      const changed = madeEpw({ ...inland, change: (fields) => fields.with(column, value) });
      const hourly = hourlyOf(changed.text);
      expect(sum(hourly.globalWM2[month]) / sum(made.globalWM2[month])).toBeCloseTo(1, 1.7);
      expect(sum(hourly.diffuseWM2[month]) / sum(made.diffuseWM2[month])).toBeCloseTo(1, 1.7);
    }
  });

  test('fills small gaps from the days around, and says so', () => {
    const gappy = madeEpw({
      ...inland,
      change: (fields, month, day) =>
        month === 6 && day === 17
          ? fields.with(6, '-99.9').with(13, '9999').with(14, '').with(15, '-9999')
          : fields,
    });
    const { notes } = read(gappy.text);
    expect(notes.join(' ')).toMatch(/0\.3 % of the hours of daylight/);
    const share = sum(hourlyOf(gappy.text).globalWM2[6]) / sum(made.globalWM2[6]);
    expect(Math.abs(share - 1)).toBeLessThan(0.04);
  });

  test('fills a row left out, over New Year too', () => {
    const without = madeEpw({
      ...inland,
      change: (fields, m, d, h) => (m === 0 && d === 1 && h === 13 ? null : fields),
    });
    const share = sum(hourlyOf(without.text).globalWM2[0]) / sum(made.globalWM2[0]);
    expect(Math.abs(share - 1)).toBeLessThan(0.02);
  });
});

const made = madeEpw(inland).text;
const line = (number: number, change: (row: string) => string): string => {
  const lines = made.split('\n');
  lines[number - 1] = change(lines[number - 1] ?? '');
  return lines.join('\n');
};
const field = (number: number, column: number, value: string): string =>
  line(number, (row) => row.split(',').with(column, value).join(','));

describe('a weather file is refused, with the line and the reason, when', () => {
  test.each([
    ['it is empty', '', 'line 1', /begin with LOCATION/],
    ['it is something else', 'year,month\n2003,1\n', 'line 1', /begin with LOCATION/],
    ['its latitude is none', line(1, (row) => row.replace('48.7', 'north')), 'line 1', /latitude/],
    ['its longitude is none', line(1, (row) => row.replace(',2.3,', ',202.3,')), 'line 1', /longitude/],
    ['its zone is none', line(1, (row) => row.replace(',1,137', ',27,137')), 'line 1', /zone/],
    ['its height is none', line(1, (row) => row.replace('137.0', '-')), 'line 1', /height/],
    ['it has no data periods', made.replace('DATA PERIODS', 'DATES'), 'line 41', /DATA PERIODS/],
    [
      'it has four records an hour',
      made.replace('PERIODS,1,1', 'PERIODS,1,4'),
      'line 8',
      /4 records an hour/,
    ],
    ['it does not say how many', made.replace('PERIODS,1,1', 'PERIODS,1,'), 'line 8', /how many records/],
    ['a row is cut off', line(812, (row) => row.slice(0, 31)), 'line 812', /fields/],
    ['rows are parted by semicolons', line(9, (row) => row.replaceAll(',', ';')), 'line 9', /1 fields/],
    ['a year is none', field(99, 0, 'MMIII'), 'line 99', /year MMIII/],
    ['a month is none', field(99, 1, '13'), 'line 99', /month/],
    ['a day is none', field(99, 2, '32'), 'line 99', /no day 32/],
    ['hours count from 0', field(9, 3, '0'), 'line 9', /1 to 24/],
    ['an hour comes twice', field(500, 3, '3'), 'line 500', /comes twice/],
    ['a temperature is none', field(77, 6, 'cold'), 'line 77', /temperature \(cold\) is no number/],
    ['a temperature cannot be', field(77, 6, '88'), 'line 77', /temperature \(88\) cannot be/],
    ['radiation is none', field(77, 13, '1e'), 'line 77', /global radiation \(1e\)/],
    ['radiation cannot be', field(77, 15, '2417'), 'line 77', /diffuse radiation \(2417\)/],
    ['radiation is below nothing', field(77, 14, '-151'), 'line 77', /direct radiation/],
  ])('%s', (_, text, where, reason) => {
    const answer = climateFromEpw(text);
    expect(answer.ok).toBe(false);
    if (answer.ok) return;
    expect(answer.where).toBe(where);
    expect(answer.reason).toMatch(reason);
    expect(answer.reason).toMatch(/\.$/);
  });

  test('a month is missing, or too much of one', () => {
    const gap = (change: MadePlace['change']) =>
      climateFromEpw(madeEpw({ ...inland, change: change as never }).text);
    const noMay = gap((fields, month) => (month === 4 ? null : fields));
    expect(noMay).toEqual({
      ok: false,
      where: 'May',
      reason: 'The file has no radiation for May. All twelve months are needed.',
    });
    const dark = gap((fields, month, day) =>
      month === 9 && day < 4 ? fields.with(13, '9999').with(15, '9999') : fields,
    );
    expect(dark.ok ? '' : dark.reason).toMatch(
      /^The radiation is missing in 11 % of the hours of daylight of October/,
    );
    const cold = gap((fields, month, day) => (month === 1 && day < 3 ? fields.with(6, '99.9') : fields));
    expect(cold.ok ? '' : cold.reason).toMatch(/^The temperature is missing in 8 % of the hours of February/);
  });
});

test('a weather file is read in one pass: twice the lines take no more than twice the work', () => {
  const long = `${made}${'\n'.repeat(3_000_000)}`;
  expect(read(long).climate).toEqual(read(made).climate);
});
