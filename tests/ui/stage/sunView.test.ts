import { describe, expect, it } from 'vitest';
import { riseAndSet, sunViewOf } from '../../../src/ui/stage/sunView.ts';

const paris = { latitudeDeg: 48.86, longitudeDeg: 2.35, timeZone: 'Europe/Paris' };
const hobart = { latitudeDeg: -42.9, longitudeDeg: 147.3, timeZone: 'Australia/Hobart' };

describe('the sun path on the stage', () => {
  it('carries the full hours of the clock at the place, each once and in order', () => {
    const labels = sunViewOf('2030-06-21', paris, 12).path.flatMap((point) => point.label ?? []);
    expect(labels).toEqual(Array.from({ length: 16 }, (_, i) => String(i + 6)));
  });

  it('stands highest to the south in the north, and to the north in the south', () => {
    expect(sunViewOf('2030-12-21', paris, 12).now?.azimuthDeg).toBeCloseTo(180, 0);
    const south = sunViewOf('2030-12-21', hobart, 12).now;
    expect(Math.min(south?.azimuthDeg ?? 90, 360 - (south?.azimuthDeg ?? 90))).toBeLessThan(1.5);
    expect(south?.altitudeDeg).toBeCloseTo(90 - 42.9 + 23.4, 0);
  });

  it('lights the stage with no sun at night', () => {
    expect(sunViewOf('2030-12-21', paris, 4).now).toBeNull();
  });

  it('tells rise and set by the clock at the place, summer time included', () => {
    // Sunrise and sunset of the day in Paris: 5:47 and 21:58 summer time, from memory of almanacs; a minute of doubt.
    expect(riseAndSet('2030-06-21', paris)).toEqual([
      expect.stringMatching(/^0?5:4[678]$/),
      expect.stringMatching(/^21:5[789]$/),
    ]);
  });
});
