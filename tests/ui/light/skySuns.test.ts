import { describe, expect, it } from 'vitest';
import type { SkyAnswer, SkyThing } from '../../../src/engine/look.ts';
import { directionAtPlace } from '../../../src/light/look/skyRaster.ts';
import { sunPosition, sunTimes } from '../../../src/light/sun.ts';
import { stageColours } from '../../../src/ui/scene/stageColours.ts';
import { skyPixels } from '../../../src/ui/sheets/light/skyPixels.ts';
import { beforeTheSun, skyWay, thingAt, threeDates } from '../../../src/ui/sheets/light/skySuns.ts';

const site = { latitudeDeg: 43.7, longitudeDeg: 11.25, timeZone: 'Europe/Rome' };
const south = { latitudeDeg: -34.9, longitudeDeg: 138.6, timeZone: 'Australia/Adelaide' };

const size = 64;
const leaf: SkyThing = { kind: 'leaf', id: 'east-shoot', name: 'East shoot' };
const wood: SkyThing = { kind: 'wood', id: 'east-shoot', name: 'East shoot' };
const wall: SkyThing = { kind: 'wall', name: 'House wall' };

/** A sky whose things are told by the place on the picture. */
function sky(thingOf: (toEast: number, toNorth: number) => number): SkyAnswer {
  const first = new Int16Array(size * size).fill(-1);
  const passed = new Float32Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      const [toEast, toNorth] = [(2 * (column + 0.5)) / size - 1, 1 - (2 * (row + 0.5)) / size];
      if (directionAtPlace(toEast, toNorth) === null) continue;
      first[row * size + column] = thingOf(toEast, toNorth);
      passed[row * size + column] = thingOf(toEast, toNorth) === 0 ? 1 : 0.2;
    }
  }
  const shares = { solidAngle: 0.5, cosine: 0.5 };
  return {
    shootId: 'east-shoot',
    name: 'East shoot',
    node: 3,
    point: [0, 1, 0],
    size,
    things: [{ kind: 'sky' }, leaf, wood, wall],
    first,
    passed,
    open: shares,
    light: shares,
  };
}

describe('the sun over the sky of a node', () => {
  it('stands in the east in the morning and highest to the south in the north', () => {
    const way = skyWay('2030-06-21', site);
    const [first, last] = [way.points[0], way.points.at(-1)];
    expect(first?.[0]).toBeGreaterThan(0.7);
    expect(last?.[0]).toBeLessThan(-0.7);
    // Noon of the longest day: 90 - 43.7 + 23.44 degrees high.
    const noon = Math.min(...way.points.map(([toEast, toNorth]) => Math.hypot(toEast, toNorth)));
    expect(noon).toBeCloseTo((43.7 - 23.44) / 90, 2);
    expect(way.hours.map(({ label }) => label)).toContain('13');
  });

  it('has its highest, a middle and its lowest sun of the season in order, in both halves of the world', () => {
    expect(threeDates({ from: '2030-04-20', to: '2030-10-17' }, site)).toEqual([
      expect.stringMatching(/^2030-06-2/),
      expect.stringMatching(/^2030-09-0/),
      '2030-10-17',
    ]);
    expect(threeDates({ from: '2030-10-20', to: '2031-04-17' }, south)).toEqual([
      expect.stringMatching(/^2030-12-2/),
      expect.stringMatching(/^2031-0[23]/),
      '2031-04-17',
    ]);
    expect(threeDates({ from: '2030-07-02', to: '2030-07-02' }, site)).toEqual(['2030-07-02']);
  });
});

describe('what stands before the sun', () => {
  it('is told with its hours, leaf and wood of a shoot together; they add up to the day', () => {
    const halves = sky((toEast, toNorth) => (toEast < 0 ? 0 : toNorth < -0.2 ? 1 : 2));
    const [open, shoot, ...others] = beforeTheSun(halves, ['2030-06-21', '2030-09-05'], site);
    expect(others).toEqual([]);
    expect(open).toMatchObject({ name: null, id: null });
    expect(shoot).toMatchObject({ name: 'East shoot', id: 'east-shoot' });
    const { sunriseMs, sunsetMs, transitMs } = sunTimes('2030-06-21', site);
    const day = ((sunsetMs ?? 0) - (sunriseMs ?? 0)) / 3_600_000;
    // Rise and set are of the upper rim with refraction, some minutes before and after the centre's.
    expect((open?.hours[0] ?? 0) + (shoot?.hours[0] ?? 0)).toBeGreaterThan(day - 0.35);
    expect((open?.hours[0] ?? 0) + (shoot?.hours[0] ?? 0)).toBeLessThan(day);
    // The east half ends at true noon; a dot is about three degrees wide.
    expect(Math.abs((open?.hours[0] ?? 0) - (shoot?.hours[0] ?? 0))).toBeLessThan(0.5);
    expect(sunPosition(transitMs, site).azimuthDeg).toBeCloseTo(180, 0);
  });

  it('counts a wall in the west in the afternoon only, and less of the sun that stands over it', () => {
    const walled = sky((toEast, toNorth) => (toEast < 0 && Math.hypot(toEast, toNorth) > 0.6 ? 3 : 0));
    const [open, wallRow] = beforeTheSun(walled, ['2030-06-21', '2030-10-17'], site);
    expect(wallRow).toMatchObject({ name: 'House wall', id: null });
    expect(wallRow?.hours[0]).toBeGreaterThan(2);
    expect(open?.hours[0]).toBeGreaterThan(9);
    expect(thingAt(walled, [-0.9, 0])).toEqual(wall);
    expect(thingAt(walled, [0.9, 0])).toEqual({ kind: 'sky' });
    expect(thingAt(walled, [-0.99, 0.99])).toBeNull();
  });
});

describe('the picture of the sky', () => {
  it('paints the dots in the circle and leaves the corners clear', () => {
    const pixels = skyPixels(
      sky((toEast) => (toEast < 0 ? 0 : 1)),
      stageColours.paper,
      null,
    );
    expect(pixels[3]).toBe(0);
    const middle = 4 * (size * (size / 2) + size / 4);
    expect(Array.from(pixels.subarray(middle, middle + 4))).toEqual([0xe3, 0xec, 0xf2, 255]);
  });

  it('sets what is pointed out apart from the rest', () => {
    const view = sky(() => 1);
    const [plain, marked] = [null, 'east-shoot'].map((of) => skyPixels(view, stageColours.paper, of));
    const dot = 4 * (size * (size / 2) + size / 2);
    expect(marked?.[dot]).not.toBe(plain?.[dot]);
    expect(skyPixels(view, stageColours.paper, 'west-shoot')[dot]).toBe(plain?.[dot]);
  });
});
