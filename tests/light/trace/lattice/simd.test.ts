import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { generatedFile, wasmText } from '../../../../scripts/makeWasm.mjs';
import type { Surface } from '../../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../../src/geometry/vec.ts';
import { waveDirections } from '../../../../src/light/sky/waveDirections.ts';
import { plainCaster } from '../../../../src/light/trace/lattice/caster.ts';
import { latticeOver } from '../../../../src/light/trace/lattice/lattice.ts';
import { makeLatticeScene } from '../../../../src/light/trace/lattice/scene.ts';
import { fastestCaster, hasSimd } from '../../../../src/light/trace/lattice/simdCaster.ts';
import { traceLeafWave } from '../../../../src/light/trace/leafWave.ts';
import { sampleIds } from '../../../document/sampleFiles.ts';
import { realCanopy } from '../realCanopy.ts';
import { anyDirection, sceneOf, stream } from '../scene.ts';

const groupsOf = (surfaces: readonly Surface[]): Int32Array =>
  Int32Array.from(surfaces, ({ shape, owner }) => (shape === 'blade' ? owner % 5 : -1));

describe('the lattice as WebAssembly', () => {
  it('works here', () => {
    expect(hasSimd()).toBe(true);
  });

  it('is built from the sources as they stand', async () => {
    expect(readFileSync(generatedFile, 'utf8')).toBe(await wasmText());
  });

  it('finds every hit of its TypeScript twin, to the last bit (seed 861)', () => {
    const size = { leaves: 140, stems: 90, triangles: 12, clouds: 0, openReceivers: 0 };
    const { surfaces } = sceneOf(861, size);
    const scene = makeLatticeScene({ surfaces, group: groupsOf(surfaces), groupCount: 5 });
    const [plain, fast] = [plainCaster(scene), fastestCaster(scene)];
    const draw = stream(862);
    const axes: Vec3[] = [
      [0, 1, 0],
      [1, 0, 0],
      [0, 0, -1],
    ];
    let hits = 0;
    for (const toSky of [...axes, ...Array.from({ length: 40 }, () => anyDirection(draw))]) {
      const lattice = latticeOver(scene, toSky, 0.009 + 0.05 * draw(), draw(), draw());
      const rays = lattice.columns * lattice.rows;
      const [expected, got] = [plain.cast(lattice), fast.cast(lattice)];
      const count = expected.start[rays] as number;
      expect(got.start.slice(0, rays + 1)).toEqual(expected.start.slice(0, rays + 1));
      expect(got.ahead.slice(0, count)).toEqual(expected.ahead.slice(0, count));
      expect(got.thing.slice(0, count)).toEqual(expected.thing.slice(0, count));
      hits += count;
    }
    expect(hits).toBeGreaterThan(100_000);
  });

  it('finds them on stems seen end-on', () => {
    const stem = (from: Vec3, to: Vec3, fromRadiusM: number, toRadiusM: number): Surface => {
      const optics = { transmittance: 0, reflectance: 0 };
      return { shape: 'stem', owner: 1, optics, from, to, fromRadiusM, toRadiusM };
    };
    const { surfaces } = sceneOf(863, { leaves: 9, stems: 0, triangles: 0, clouds: 0, openReceivers: 0 });
    const all = [
      ...surfaces,
      stem([0, 0.2, 0], [0, 0.9, 0], 0.2, 0.05),
      stem([0.3, 1, 0], [0.3, 0.4, 0], 0.1, 0.1),
    ];
    const scene = makeLatticeScene({ surfaces: all, group: groupsOf(all), groupCount: 5 });
    const lattice = latticeOver(scene, [0, 1, 0], 0.017, 0.4, 0.1);
    const [expected, got] = [plainCaster(scene).cast(lattice), fastestCaster(scene).cast(lattice)];
    const count = expected.start[lattice.columns * lattice.rows] as number;
    expect(Array.from(expected.thing.subarray(0, count))).toEqual(expect.arrayContaining([9, 10]));
    expect(got.ahead.slice(0, count)).toEqual(expected.ahead.slice(0, count));
  });

  it.each(sampleIds)('gives the same wave on the sample tree %s (seed 871)', (id) => {
    const { canopy, surfaces, input } = realCanopy(id);
    const directions = waveDirections({ latitudeDeg: input.site.latitudeDeg, seed: 871, wave: 0 });
    const wanted = {
      surfaces,
      group: Int32Array.from(surfaces, (_, i) => (i < canopy.leaves.length ? i % 7 : -1)),
      groupCount: 7,
      directions: directions.filter((_, d) => d % 5 === 0),
      ownerCount: canopy.owners.length,
      spacingM: 0.053,
      seed: 871,
      wave: 0,
    };
    expect(traceLeafWave(wanted, fastestCaster)).toEqual(traceLeafWave(wanted, plainCaster));
  });
});
