import { beforeAll, describe, expect, it } from 'vitest';
import { energyWords } from '../../src/cli/energyWords.ts';
import type { SceneFile } from '../../src/document/scene/sceneFile.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import type { LightReport } from '../../src/engine/reports.ts';
import { parMolPerMJ } from '../../src/season/par.ts';
import { type MadeEpw, madeEpw } from '../season/epw/madeEpw.ts';
import { answerOf, exampleText } from './stand.ts';

const whip = JSON.parse(exampleText('young-whip')) as {
  site: { latitudeDeg: number; longitudeDeg: number; elevationM: number };
};
const { latitudeDeg, longitudeDeg, elevationM } = whip.site;
const zoneH = Math.round(longitudeDeg / 15);
let made: MadeEpw;
let files: Record<string, string>;

beforeAll(() => {
  made = madeEpw({ latitudeDeg, longitudeDeg, zoneH, years: [2014] });
  const here = made.text.replace('137.0', String(elevationM));
  const away = madeEpw({ latitudeDeg: latitudeDeg + 9.2, longitudeDeg, zoneH, years: [2014] });
  files = {
    'whip.json': exampleText('young-whip'),
    'here.epw': here,
    'away.epw': away.text,
    'broken.EPW': here.split('\n').with(99, '2014,1').join('\n'),
  };
}, 60_000);

const november = ['--waves', '2', '--from', '2027-11-01', '--to', '2027-11-30', '--json'];
const ask = (...args: string[]) => answerOf(args, { files, makeEngine: createInPlaceEngine });
const lightOf = async (...args: string[]): Promise<LightReport> => {
  const { out, err, code } = await ask('light', 'whip.json', ...november, ...args);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out) as LightReport;
};

describe('boughlight with a weather file', { timeout: 60_000 }, () => {
  it('gives the light of the file’s month and tells where it is from', async () => {
    const report = await lightOf('--weather', 'here.epw');
    const wanted = (made.globalWM2[10] ?? []).reduce((sum, value) => sum + value, 0) * 0.0036 * parMolPerMJ;
    expect(Math.abs(report.openSkyParMolM2Day / wanted - 1)).toBeLessThan(0.001);
    expect(report.energy).toEqual({
      basis: 'hourly',
      source: 'Low, and green, Made Up, XXX (invented), 2014',
    });
    expect(report.parFactor).toEqual({ molPerMJ: parMolPerMJ, low: 1.98, high: 2.3 });
  });

  it('plans with it, and says so', async () => {
    const plan = ['plan', 'whip.json', '--waves', '2', '--worlds', '0'];
    const own = await ask(...plan);
    const given = await ask(...plan, '--weather', 'here.epw');
    expect(given.out).toContain('Weather: mean hours of Low, and green, Made Up, XXX (invented), 2014.');
    expect(given.out).not.toBe(own.out);
    const clear = await ask(...plan, '--weather', 'clear', '--sky', 'clear');
    expect(clear.out).toContain('Weather: every day without a cloud');
  });

  it('hands its light to other ray tracers, under the sky that was asked for', async () => {
    const sky = ['--weather', 'here.epw', '--sky', 'all-weather'];
    const { out } = await ask('scene', 'whip.json', ...november, ...sky);
    const scene = JSON.parse(out) as SceneFile;
    const report = await lightOf(...sky);
    expect(scene.openSkyParMolM2Day).toBe(report.openSkyParMolM2Day);
    expect(scene.result.map(({ lightFraction }) => lightFraction)).toEqual(
      report.shoots.map(({ lightFraction }) => lightFraction),
    );
    const even = await lightOf('--weather', 'here.epw');
    expect(report.openSkyParMolM2Day).toBeCloseTo(even.openSkyParMolM2Day, 9);
    expect(report.shoots[0]?.lightFraction).not.toBe(even.shoots[0]?.lightFraction);
  });

  it.each([
    ['away.epw', /^boughlight: away\.epw: line 1: The weather is of a place at latitude/],
    ['broken.EPW', /^boughlight: broken\.EPW: line 100: The row has 2 fields/],
    ['absent.epw', /^boughlight: absent\.epw: there is no such file/],
  ])('refuses %s with exit code 2 and nothing on standard output', async (path, words) => {
    for (const command of ['light', 'plan']) {
      const { code, out, err } = await ask(command, 'whip.json', '--weather', path);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toMatch(words);
    }
  });
});

describe('the light of an answer is said to be', () => {
  it.each([
    ['hourly', 'Low Valley, 2003', 'Weather: mean hours of Low Valley, 2003.'],
    ['clear sky', 'Haurwitz 1945', 'Weather: every day without a cloud (Haurwitz 1945).'],
    ['clearness', 'published', 'Weather: from clearness figures of each month, as published.'],
    ['sunshine', 'measured', 'Weather: from hours of sunshine of each month, as measured.'],
    [
      'sunshine',
      'guess',
      'Weather: from hours of sunshine of each month, which are a guess: put in figures of the place.',
    ],
  ] as const)('%s of %s', (basis, source, words) => {
    expect(energyWords({ basis, source })).toBe(words);
  });
});
