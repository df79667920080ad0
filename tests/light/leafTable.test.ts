import { describe, expect, it } from 'vitest';
import type { Surface } from '../../src/geometry/surface.ts';
import type { CellLight } from '../../src/light/directions.ts';
import { leafExposure, leafExposureOf } from '../../src/light/leafExposure.ts';
import type { LeafLedger } from '../../src/light/leafLedger.ts';
import { leafOptics } from '../../src/light/leafOptics.ts';
import { leafExposureParts, leafPartsTable, measuredLeafParts } from '../../src/light/leafParts.ts';
import { leafTable } from '../../src/light/leafTable.ts';
import { partsOf } from '../../src/light/lightParts.ts';
import { traceLeafWave } from '../../src/light/trace/leafWave.ts';
import { lightOf, waveOf } from './cells.ts';
import { tracedLeaves } from './leafLedgers.ts';
import { sceneOf } from './trace/scene.ts';

const ownerCount = 9;
const groupCount = 5;
const figures = { leafReflectance: 0.09, leafTransmittance: 0.07 };

const ledgerOf = (surfaces: readonly Surface[], seed: number, waveCount: number): LeafLedger => {
  const group = Int32Array.from(surfaces, ({ shape, owner }) => (shape === 'blade' ? owner % 4 : -1));
  return tracedLeaves({ surfaces, group, groupCount, ownerCount, seed, waveCount });
};

const even = lightOf(0.19);
const dark = (cells: Float64Array): Float64Array => new Float64Array(cells.length);
/** Lights that share nothing: all of it, beam alone, sky alone, none. */
const lights: readonly CellLight[] = [
  even,
  {
    ...even,
    sky: dark(even.sky),
    ground: dark(even.ground),
    openDiffuseParMolM2Day: 0,
    openSkyParMolM2Day: 17,
  },
  { ...even, beam: dark(even.beam), openBeamParMolM2Day: 0, openSkyParMolM2Day: 11 },
  {
    sky: dark(even.sky),
    beam: dark(even.beam),
    ground: dark(even.ground),
    openSkyParMolM2Day: 0,
    openBeamParMolM2Day: 0,
    openDiffuseParMolM2Day: 0,
  },
];
const keeps = [undefined, Uint8Array.of(1, 1, 0, 1, 0, 1, 1, 0, 1), Uint8Array.of(1, 0, 0, 0, 0, 0, 0, 0, 0)];

describe('a table of leaf light', () => {
  it.each([71, 72])('answers as the ledger itself, under any light and keep-set (seed %i)', (seed) => {
    const size = { leaves: 43, stems: 13, triangles: 4, clouds: seed % 2, openReceivers: 0 };
    const ledger = ledgerOf(sceneOf(seed, size).surfaces, seed, 3);
    for (const keep of keeps) {
      const [table, parts] = [leafTable(ledger, keep), leafPartsTable(ledger, figures, keep)];
      for (const light of lights) {
        expect(leafExposureOf(table, light)).toEqual(leafExposure(ledger, light, keep));
        expect(partsOf(parts, light)).toEqual(measuredLeafParts(ledger, light, figures, keep));
      }
    }
  });

  it('is light per leaf area, by hand for one leaf alone: seen area over area, less one ray in many (seed 73)', () => {
    const leaf: Surface = {
      shape: 'blade',
      owner: 1,
      optics: leafOptics(figures),
      origin: [0.3, 1, 0],
      along: [0.9, 0.2, 0.1],
      across: [0.1, 0.3, 0.8],
      outline: [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ],
    };
    const normal = [0.2 * 0.8 - 0.1 * 0.3, 0.1 * 0.1 - 0.9 * 0.8, 0.9 * 0.3 - 0.2 * 0.1] as const;
    const areaM2 = Math.hypot(...normal);
    const directions = waveOf(73, 0);
    const wave = traceLeafWave({
      surfaces: [leaf],
      group: Int32Array.of(1),
      groupCount: 2,
      directions,
      ownerCount: 2,
      spacingM: 0.004,
      seed: 73,
      wave: 0,
    });
    const [row] = leafTable({ ownerCount: 2, groupCount: 2, waves: [wave], seed: 73 }).waves;
    directions.forEach(({ toSky }, d) => {
      const cosine = Math.abs(toSky[0] * normal[0] + toSky[1] * normal[1] + toSky[2] * normal[2]) / areaM2;
      expect(row?.passed[2 * d]).toBe(0);
      expect(Math.abs((row?.passed[2 * d + 1] ?? Number.NaN) - cosine)).toBeLessThan(0.012);
    });
  });

  it('refuses an empty ledger and a keep-set of another size', () => {
    const ledger = ledgerOf([], 74, 1);
    expect(() => leafTable({ ...ledger, waves: [] })).toThrow('needs at least one wave, got none');
    expect(() => leafTable(ledger, new Uint8Array(8))).toThrow('each of 9 owners, got 8');
    expect(() => leafPartsTable({ ...ledger, waves: [] }, figures)).toThrow(
      'needs at least one wave, got none',
    );
  });
});

it('light through a fixed net counts as straight, as it does at the nodes (seed 75)', () => {
  const sheet = (y: number, owner: number, transmittance: number, halfM: number): Surface => ({
    shape: 'blade',
    owner,
    optics: { transmittance, reflectance: 0 },
    origin: [-halfM, y, -halfM],
    along: [2 * halfM, 0, 0],
    across: [0, 0, 2 * halfM],
    outline: [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ],
  });
  const surfaces = [sheet(1, 1, 0.083, 0.3), sheet(1.2, 0, 0.6, 1e5)];
  const wave = traceLeafWave({
    surfaces,
    group: Int32Array.of(0, -1),
    groupCount: 1,
    directions: waveOf(75, 0),
    ownerCount: 2,
    spacingM: 0.03,
    seed: 75,
    wave: 0,
  });
  const light = { ...even, ground: dark(even.ground) };
  const ledger = { ownerCount: 2, groupCount: 1, waves: [wave], seed: 75 };
  const [parts] = leafExposureParts(ledger, light, figures);
  const [share] = leafExposure(ledger, light);
  expect(parts?.transmitted).toBe(0);
  expect(parts?.scattered).toBe(0);
  expect((parts?.beam ?? 0) + (parts?.sky ?? 0)).toBeCloseTo(share?.share ?? Number.NaN, 12);
  expect(share?.share).toBeGreaterThan(0.55);
  expect(share?.share).toBeLessThan(0.65);
});
