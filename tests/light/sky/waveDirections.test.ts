import { expect, test } from 'vitest';
import { dot, length, normalize, type Vec3 } from '../../../src/geometry/vec.ts';
import { bearingDeg, elevationDeg } from '../../../src/geometry/world.ts';
import {
  beamCells,
  beamColumns,
  declinationAtRow,
  groundPatches,
  hourAngleAtColumn,
  rowOfDeclination,
  skyPatches,
} from '../../../src/light/sky/cells.ts';
import { type Patch, patchRows, reinhartPatches } from '../../../src/light/sky/patches.ts';
import { skyDirections } from '../../../src/light/sky/skyDirections.ts';
import { waveDirections } from '../../../src/light/sky/waveDirections.ts';

const seed = 4117;

function expectWithin(v: Vec3, patch: Patch): void {
  const elevation = elevationDeg(v);
  const bearing = bearingDeg(v);
  expect(elevation).toBeGreaterThanOrEqual(patch.lowDeg - 1e-9);
  expect(elevation).toBeLessThanOrEqual(patch.highDeg + 1e-9);
  expect(bearing).toBeGreaterThanOrEqual(patch.fromDeg - 1e-9);
  expect(bearing).toBeLessThanOrEqual(patch.toDeg + 1e-9);
}

test(`each sky and ground cell has one direction, a unit vector within it, in every wave, seed ${seed}`, () => {
  for (let wave = 0; wave < 7; wave++) {
    const directions = waveDirections({ latitudeDeg: 48.7, seed, wave });
    const sky = directions.filter((d) => d.kind === 'sky');
    const ground = directions.filter((d) => d.kind === 'ground');
    expect(sky.map((d) => d.cell)).toEqual(skyPatches.map((_, i) => i));
    expect(ground.map((d) => d.cell)).toEqual(groundPatches.map((_, i) => i));
    for (const { toSky, cell } of sky) expectWithin(toSky, skyPatches[cell] as Patch);
    for (const { toSky, cell } of ground) {
      expectWithin([toSky[0], -toSky[1], toSky[2]], groundPatches[cell] as Patch);
      expect(toSky[1]).toBeLessThan(0);
    }
    for (const { toSky } of directions) expect(length(toSky)).toBeCloseTo(1, 12);
  }
});

test(`beam directions lie within their boxes and above the level, seed ${seed}`, () => {
  const latitudeDeg = -37.4;
  const phi = (latitudeDeg * Math.PI) / 180;
  const cells = new Set<number>();
  for (let wave = 0; wave < 20; wave++) {
    for (const { toSky, cell } of waveDirections({ latitudeDeg, seed, wave }).filter(
      (d) => d.kind === 'beam',
    )) {
      expect(toSky[1]).toBeGreaterThan(0);
      const [east, upward, north] = [toSky[0], toSky[1], -toSky[2]];
      const sinDeclination = upward * Math.sin(phi) + north * Math.cos(phi);
      const hourAngle = (Math.atan2(-east, upward * Math.cos(phi) - north * Math.sin(phi)) * 180) / Math.PI;
      const row = rowOfDeclination((Math.asin(sinDeclination) * 180) / Math.PI);
      expect(Math.floor(row)).toBe(Math.floor(cell / beamColumns));
      expect(Math.floor((hourAngle + 180) / 10)).toBe(cell % beamColumns);
      cells.add(cell);
    }
  }
  expect(cells.size).toBeGreaterThan(beamCells / 2 - 10);
  expect(cells.size).toBeLessThan(beamCells / 2 + 30);
});

test('no box is missing where the sun could be: each day and hour of the year falls into one that is traced', () => {
  const traced = new Set<number>();
  for (let wave = 0; wave < 60; wave++) {
    for (const d of waveDirections({ latitudeDeg: 48.7, seed, wave }))
      if (d.kind === 'beam') traced.add(d.cell);
  }
  const summerNoon = 11 * beamColumns + 18;
  const summerEvening = 11 * beamColumns + Math.floor((115 + 180) / 10);
  const winterNoon = 17;
  for (const cell of [summerNoon, summerEvening, winterNoon]) expect(traced.has(cell)).toBe(true);
  expect(traced.has(11 * beamColumns)).toBe(false);
});

test('the same seed and wave give the same directions, others give others', () => {
  const input = { latitudeDeg: 48.7, seed, wave: 3 };
  expect(waveDirections(input)).toEqual(waveDirections(input));
  const first = (other: object): Vec3 | undefined => waveDirections({ ...input, ...other })[0]?.toSky;
  expect(first({ wave: 4 })).not.toEqual(first({}));
  expect(first({ seed: seed + 1 })).not.toEqual(first({}));
});

test('rows hold the sun for equal parts of the year and undo each other', () => {
  for (const row of [0, 0.3, 3.7, 6, 9.1, 11.9, 12])
    expect(rowOfDeclination(declinationAtRow(row))).toBeCloseTo(row, 9);
  expect(declinationAtRow(7) - declinationAtRow(6)).toBeCloseTo(5.92, 1);
  expect(declinationAtRow(12) - declinationAtRow(11)).toBeCloseTo(0.83, 1);
  expect(rowOfDeclination(23.449)).toBeLessThanOrEqual(12);
  expect(hourAngleAtColumn(0)).toBe(-180);
});

test(`random directions fill a patch evenly in solid angle, seed ${seed}`, () => {
  const cap = 144;
  const sines = Array.from(
    { length: 4000 },
    (_, wave) => skyDirections({ subdivision: 1, seed, wave })[cap]?.toSky[1] as number,
  );
  const mean = sines.reduce((sum, s) => sum + s, 0) / sines.length;
  expect(mean).toBeCloseTo((1 + Math.sin((84 * Math.PI) / 180)) / 2, 4);
});

test('directions over a hemisphere add up to half of all solid angle and lie about its middle', () => {
  const toward = normalize([0.3, -0.2, 0.7]);
  const directions = skyDirections({ subdivision: 2, seed, wave: 1, toward });
  expect(directions).toHaveLength(577);
  expect(directions.reduce((sum, d) => sum + d.solidAngleSr, 0)).toBeCloseTo(2 * Math.PI, 10);
  let onFacet = 0;
  for (const { toSky, solidAngleSr } of directions) {
    expect(dot(toSky, toward)).toBeGreaterThanOrEqual(0);
    expect(length(toSky)).toBeCloseTo(1, 12);
    onFacet += dot(toSky, toward) * solidAngleSr;
  }
  expect(onFacet / Math.PI).toBeCloseTo(1, 2);
});

test('patches cover the sky once: solid angles add up to 2 pi at any subdivision', () => {
  for (const n of [1, 2, 5]) {
    expect(reinhartPatches(n).reduce((sum, p) => sum + p.solidAngleSr, 0)).toBeCloseTo(2 * Math.PI, 10);
  }
  expect(groundPatches.reduce((sum, p) => sum + p.solidAngleSr, 0)).toBeCloseTo(2 * Math.PI, 10);
});

test('a latitude that is none is refused, and the poles are not', () => {
  for (const latitudeDeg of [Number.NaN, 90.5, -Infinity]) {
    expect(() => waveDirections({ latitudeDeg, seed, wave: 0 })).toThrow(
      'waveDirections: a latitude within 90',
    );
  }
  for (const latitudeDeg of [90, -90]) {
    const beam = waveDirections({ latitudeDeg, seed, wave: 0 }).filter(({ kind }) => kind === 'beam');
    expect(beam.length).toBe(6 * beamColumns);
  }
});

test('subdivisions and rows that make no sky are refused', () => {
  expect(() => reinhartPatches(0)).toThrow('reinhartPatches');
  expect(() => reinhartPatches(1.5)).toThrow('reinhartPatches');
  expect(() => patchRows([0, 90], [4, 2])).toThrow('patchRows');
});
