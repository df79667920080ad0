import { describe, expect, it } from 'vitest';
import { cellLight, cellLightOf } from '../../../src/light/sky/cellLight.ts';
import { levelLight, together } from '../../../src/light/sky/levelLight.ts';
import { openSkyDay } from '../../../src/light/sky/openSkyDay.ts';
import { daysOf } from '../../../src/season/calendar.ts';
import { northern, southern } from '../../season/places.ts';

const sum = (values: ArrayLike<number>): number => Array.from(values).reduce((a, b) => a + b, 0);
const over = { groundReflectance: 0.23, skyKind: 'clear' } as const;

describe.each([
  ['north', northern, { from: '2025-04-26', to: '2025-10-16' }],
  ['south', southern, { from: '2025-11-28', to: '2026-02-03' }],
] as const)('light on the open level, %s', (_, site, period) => {
  const level = levelLight(site, period);
  const { latitudeDeg } = site;

  it('has the light and the hours of sun of its days', () => {
    const days = daysOf(period).map((date) => openSkyDay(site, date));
    expect(level.days).toBe(days.length);
    expect(sum(level.beamParMolM2)).toBeCloseTo(sum(days.map((day) => day.beamParMolM2Day)), 8);
    expect(sum(level.diffuseParMolM2)).toBeCloseTo(sum(days.map((day) => day.diffuseParMolM2Day)), 8);
    expect(sum(level.sunH)).toBeCloseTo(sum(days.map((day) => day.dayLengthH)), 8);
  });

  it('adds up from parts of the period to the light of the whole', () => {
    const [middle, after] = [daysOf(period)[31] as string, daysOf(period)[32] as string];
    const parts = [
      levelLight(site, { from: period.from, to: middle }),
      levelLight(site, { from: after, to: period.to }),
    ];
    const whole = cellLight({ site, period, ...over });
    const added = cellLightOf(together(parts), { latitudeDeg, ...over });
    expect(added.openSkyParMolM2Day).toBeCloseTo(whole.openSkyParMolM2Day, 10);
    added.beam.forEach((energy, cell) => {
      expect(energy).toBeCloseTo(whole.beam[cell] as number, 10);
    });
    added.sky.forEach((energy, cell) => {
      expect(energy).toBeCloseTo(whole.sky[cell] as number, 10);
    });
  });

  it('has in its hours the light of the day, and in each hour that of its beginning to its end', () => {
    const hours = Array.from({ length: 24 }, (_unused, solarHour) =>
      cellLightOf(level, { latitudeDeg, ...over, solarHour }),
    );
    const whole = cellLightOf(level, { latitudeDeg, ...over });
    expect(sum(hours.map((hour) => hour.openBeamParMolM2Day))).toBeCloseTo(whole.openBeamParMolM2Day, 10);
    whole.sky.forEach((energy, cell) => {
      expect(sum(hours.map(({ sky }) => sky[cell] as number))).toBeCloseTo(energy, 10);
    });
    const day = openSkyDay(site, period.from);
    const one = levelLight(site, { from: period.from, to: period.from });
    const nine = cellLightOf(one, { latitudeDeg, ...over, skyKind: 'uniform', solarHour: 9 });
    expect(nine.openBeamParMolM2Day).toBeCloseTo(day.hours[9]?.beamParMolM2 as number, 10);
    expect(nine.openDiffuseParMolM2Day).toBeCloseTo(day.hours[9]?.diffuseParMolM2 as number, 10);
  });

  it('refuses an hour that is none', () => {
    expect(() => cellLightOf(level, { latitudeDeg, ...over, solarHour: 24 })).toThrow('0 to 23, got 24');
    expect(() => cellLightOf(level, { latitudeDeg, ...over, solarHour: 7.5 })).toThrow('got 7.5');
  });
});
