import { describe, expect, it } from 'vitest';
import type { LightOptions, PlanOptions } from '../../src/engine/engine.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import type { LightReport, ShootLight } from '../../src/engine/reports.ts';
import type { LightParts } from '../../src/light/lightParts.ts';
import { answerOf, exampleText } from './stand.ts';

const files = { 'fig.json': exampleText('potted-fig-in-leaf') };

const partsOf = (share: number): LightParts => ({
  beam: 0.5 * share,
  sky: 0.375 * share,
  ground: 0,
  transmitted: 0.0625 * share,
  scattered: 0.0625 * share,
});

const shoot = (name: string, lightFraction: number, standardError: number): ShootLight => ({
  id: `id-of-${name.replaceAll(' ', '-')}`,
  name,
  lightFraction,
  standardError,
  parMolM2Day: 38.4 * lightFraction,
  parts: partsOf(lightFraction),
  leafLightFraction: 0.6 * lightFraction,
  leafParts: partsOf(0.6 * lightFraction),
  byMonth: [
    { month: 12, lightFraction: 0.9 * lightFraction, parMolM2Day: 40 * lightFraction },
    { month: 1, lightFraction, parMolM2Day: 41 * lightFraction },
  ],
  byHour: [
    { solarHour: 8, lightFraction: 0.7 * lightFraction, parMolM2: 2.1 * lightFraction },
    { solarHour: 9, lightFraction, parMolM2: 3.3 * lightFraction },
  ],
  sunHours: 8.7 * lightFraction,
  openSky: { solidAngle: 0.8 * lightFraction, cosine: 0.9 * lightFraction },
  heightM: 1.3 + lightFraction,
});

const threshold = (share: number) => ({ share, source: 'made up', isSet: false });

const light: LightReport = {
  format: 'boughlight-light',
  version: 1,
  period: { from: '2026-12-03', to: '2027-01-29' },
  weather: 'normal',
  sky: 'uniform',
  solarHour: null,
  energy: { basis: 'sunshine', source: 'measured' },
  leafSeason: { from: '2030-04-20', to: '2030-10-29', daysOutside: 0 },
  parFactor: { molPerMJ: 2.018, low: 1.98, high: 2.3 },
  openSkyParMolM2Day: 38.4,
  dayLengthH: 8.9,
  thresholds: { deepShade: threshold(0.135), fruitingLight: threshold(0.27), saturation: threshold(0.45) },
  seed: 5,
  rays: 123_456,
  shoots: [
    shoot('East limb, shoot 2', 0.613, 0.012),
    shoot('Inner shoot', 0.072, 0.004),
    shoot('Low shoot', 0.19, 0.02),
  ],
};

describe('boughlight light', () => {
  it('says first how many shoots sit in the dark, then every shoot, the darkest first', async () => {
    const { code, out, err } = await answerOf(['light', 'fig.json'], { files, light });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const lines = out.split('\n');
    expect(lines[0]).toBe(
      '1 of 3 shoots sits in deep shade (below 13.5 % of open sky); 1 in fruiting light (27 % or more).',
    );
    expect(lines[1]).toContain('2026-12-03 to 2027-01-29. Open sky: 38.4 mol/m²/d of PAR.');
    expect(lines[2]).toBe('Weather: from hours of sunshine of each month, as measured.');
    expect(lines.slice(4, 8)).toEqual([
      'Shoot               Light    ±  mol/m²/d  Sun h   Sky  Leaves  Dec  Jan',
      'Inner shoot           7 %  0.4       2.8    0.6   6 %     4 %    6    7',
      'Low shoot            19 %  2.0       7.3    1.7  17 %    11 %   17   19',
      'East limb, shoot 2   61 %  1.2      23.5    5.3  55 %    37 %   55   61',
    ]);
    expect(out).toContain('PAR: 2.02 mol for each MJ of sunlight; figures in print run from 1.98 to 2.30.');
    expect(out).toContain('Seed 5, 123456 rays.');
  });

  it('says how many shoots have how much light, and how it falls off from the top down', async () => {
    const { out } = await answerOf(['light', 'fig.json'], { files, light });
    const lines = out.split('\n');
    const from = lines.indexOf('Light       Shoots');
    expect(lines.slice(from, from + 8)).toEqual([
      'Light       Shoots',
      '0 to 10 %        1  #',
      '10 to 20 %       1  #',
      '20 to 30 %       0',
      '30 to 40 %       0',
      '40 to 50 %       0',
      '50 to 60 %       0',
      '60 to 70 %       1  #',
    ]);
    expect(lines.slice(from + 9, from + 13)).toEqual([
      'Height            Shoots  Light  Sun h',
      '1.90 m to 2.00 m       1   61 %    5.3',
      '1.40 m to 1.50 m       1   19 %    1.7',
      '1.30 m to 1.40 m       1    7 %    0.6',
    ]);
    const us = await answerOf(['light', 'fig.json', '--units', 'us'], { files, light });
    expect(us.out).toContain('6 ft to 6 ft 6 in       1   61 %');
  });

  it('tells every node and every leaf as JSON when asked', async () => {
    const { out } = await answerOf(['light', 'fig.json', '--json', '--nodes', '--leaves'], { files, light });
    expect(JSON.parse(out)).toEqual({ ...light, nodes: [], leaves: [] });
  });

  it('says what weather and sky were asked for beside the usual', async () => {
    const energy = { basis: 'clear sky', source: 'Haurwitz 1945' } as const;
    const asked = { ...light, weather: 'clear', sky: 12, energy } as const;
    const { out } = await answerOf(['light', 'fig.json'], { files, light: asked });
    expect(out.split('\n')[1]).toContain('of PAR. Sky: CIE 12.');
    expect(out.split('\n')[2]).toBe('Weather: every day without a cloud (Haurwitz 1945).');
    const named = { ...light, sky: 'overcast' } as const;
    expect((await answerOf(['light', 'fig.json'], { files, light: named })).out).toContain(
      'of PAR. Sky: overcast.',
    );
  });

  it('measures deep shade by the fruiting light that the grower has set', async () => {
    const tree = JSON.parse(files['fig.json']) as { settings: Record<string, number> };
    tree.settings = { fruitHalfAtFraction: 0.34 };
    const told = { files: { 'x.json': JSON.stringify(tree) }, makeEngine: createInPlaceEngine };
    const { out } = await answerOf(['light', 'x.json', '--waves', '2'], told);
    expect(out).toContain('(below 17 % of open sky)');
    expect(out).toContain('Fruiting light, 34 %: set by you.');
  });

  it('speaks of one shoot as one', async () => {
    const one = { ...light, shoots: light.shoots.slice(0, 1) };
    const { out } = await answerOf(['light', 'fig.json'], { files, light: one });
    expect(out).toMatch(/^0 of 1 shoot sit in deep shade/);
  });

  it('tells on standard error what was put right in the file, and answers all the same', async () => {
    const tree = JSON.parse(files['fig.json']) as { name: string };
    const named = JSON.stringify({ ...tree, name: `${tree.name}\u202e` });
    const { code, out, err } = await answerOf(['light', '-', '--json'], { files: { '-': named }, light });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual(light);
    expect(err).toBe('boughlight: note: One name had hidden characters, which were taken out.\n');
  });

  it('says so when nothing is in leaf', async () => {
    const { out } = await answerOf(['light', 'fig.json'], { files, light: { ...light, shoots: [] } });
    expect(out).toMatch(/^There are no shoots in leaf in this period\.\n/);
    expect(out).not.toContain('Shoot  ');
  });

  it('answers as JSON what the engine answers, to the digit', async () => {
    const { out } = await answerOf(['light', 'fig.json', '--json'], { files, light });
    expect(JSON.parse(out)).toEqual(light);
  });

  it('hands its options to the engine, and only those given', async () => {
    const seen: (LightOptions | PlanOptions | undefined)[] = [];
    const told = {
      files,
      light,
      seen: (options: LightOptions | PlanOptions | undefined) => seen.push(options),
    };
    await answerOf(['light', 'fig.json'], told);
    await answerOf(
      ['light', 'fig.json', '--waves', '3', '--seed', '0', '--from', '2027-07-01', '--to', '2027-07-31'],
      told,
    );
    expect(seen).toEqual([{}, { waves: 3, seed: 0, period: { from: '2027-07-01', to: '2027-07-31' } }]);
  });
});
