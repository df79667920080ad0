import { describe, expect, it } from 'vitest';
import { fixedOwner, type Surface } from '../../src/geometry/surface.ts';
import type { Vec3 } from '../../src/geometry/vec.ts';
import { canopyReceivers } from '../../src/growth/scene.ts';
import { exposure } from '../../src/light/exposure.ts';
import { leafExposure } from '../../src/light/leafExposure.ts';
import type { LeafLedger, LeafWave } from '../../src/light/leafLedger.ts';
import { rayWeights } from '../../src/light/rayWeights.ts';
import { cellLight } from '../../src/light/sky/cellLight.ts';
import { waveDirections } from '../../src/light/sky/waveDirections.ts';
import { bruteForceTracer } from '../../src/light/trace/bruteForce.ts';
import { traceLeafWave, traceLeafWaveSteps } from '../../src/light/trace/leafWave.ts';
import { traceWave } from '../../src/light/trace/wave.ts';
import { leafPoints } from './trace/lattice/points.ts';
import { realCanopy } from './trace/realCanopy.ts';
import { sceneOf } from './trace/scene.ts';

const tree = realCanopy('young-whip');
const { canopy, surfaces } = tree;
const latitudeDeg = tree.input.site.latitudeDeg;
const light = cellLight({
  site: tree.input.site,
  groundReflectance: 0.2,
  period: { from: '2026-11-03', to: '2027-01-19' },
  skyKind: 'uniform',
});
const shootOf = new Map(canopy.shoots.map(({ owner }, s) => [owner, s]));
const group = Int32Array.from(surfaces, (_, i) => shootOf.get(canopy.leaves[i]?.owner ?? -1) ?? -1);
const ownerCount = canopy.owners.length;
const groupCount = canopy.shoots.length;

const waveOf = (seed: number, wave: number, spacingM: number): LeafWave =>
  traceLeafWave({
    surfaces,
    group,
    groupCount,
    directions: waveDirections({ latitudeDeg, seed, wave }),
    ownerCount,
    spacingM,
    seed,
    wave,
  });
const ledgerOf = (seed: number, waves: number, spacingM: number): LeafLedger => ({
  ownerCount,
  groupCount,
  waves: Array.from({ length: waves }, (_, wave) => waveOf(seed, wave, spacingM)),
  seed,
});
const someGone = Uint8Array.from({ length: ownerCount }, (_, owner) =>
  owner % 3 === 1 && owner > 1 ? 0 : 1,
);

describe('light on leaves', () => {
  it('is that of many points on the leaves, all kept and some gone (seed 41)', () => {
    const waves = Array.from({ length: 24 }, (_, wave) =>
      traceWave({
        surfaces,
        receivers: canopyReceivers(canopy, { seed: 41, wave }).slice(canopy.nodes.length),
        directions: waveDirections({ latitudeDeg, seed: 41, wave }),
        ownerCount,
      }),
    );
    const points = { ownerCount, receiverCount: canopy.leaves.length, waves, seed: 41 };
    const grouping = {
      count: groupCount,
      group: Int32Array.from(canopy.leaves, ({ owner }) => shootOf.get(owner) ?? -1),
      weight: Float64Array.from(canopy.leaves, (leaf) => leaf.areaM2),
    };
    const lattice = ledgerOf(42, 4, 0.06);
    for (const keep of [undefined, someGone]) {
      const byPoints = exposure(points, light, grouping, keep);
      const byLattice = leafExposure(lattice, light, keep);
      const off = byLattice.map(
        ({ share, standardError }, s) =>
          (share - (byPoints[s]?.share ?? Number.NaN)) /
          Math.hypot(standardError, byPoints[s]?.standardError ?? Number.NaN),
      );
      // 21 shoots, errors known to a tenth: none past four standard errors, and no common drift.
      expect(Math.max(...off.map(Math.abs))).toBeLessThan(4);
      expect(Math.abs(off.reduce((sum, z) => sum + z, 0)) / off.length).toBeLessThan(0.7);
    }
  });

  it('is beam and diffuse together, and falls to the closed sum for leaves alone in the open (seed 43)', () => {
    const leaf = (x: number): Surface => ({
      shape: 'blade',
      owner: 1,
      optics: { transmittance: 0.07, reflectance: 0.09 },
      origin: [x, 1, 0],
      along: [0.2, 0, 0],
      across: [0, 0, 0.2],
      outline: [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ],
    });
    const waves = Array.from({ length: 4 }, (_, wave) =>
      traceLeafWave({
        surfaces: [leaf(0), leaf(3)],
        group: Int32Array.of(0, 0),
        groupCount: 2,
        directions: waveDirections({ latitudeDeg, seed: 43, wave }),
        ownerCount: 2,
        spacingM: 0.019,
        seed: 43,
        wave,
      }),
    );
    const dark = { ...light, ground: light.ground.map(() => 0) };
    const [open, empty] = leafExposure({ ownerCount: 2, groupCount: 2, waves, seed: 43 }, dark);
    expect(open?.share).toBeCloseTo((open?.beamShare ?? 0) + (open?.diffuseShare ?? 0), 12);
    // A level leaf in the open gets what a level sensor gets.
    expect(Math.abs((open?.share ?? 0) - 1)).toBeLessThan(4 * (open?.standardError ?? 0));
    expect(open?.standardError).toBeLessThan(0.004);
    expect(empty).toEqual({ share: 0, standardError: 0, beamShare: 0, diffuseShare: 0 });
  });
});

describe('a wave on leaves among every shape (seed 51)', () => {
  const scene = sceneOf(51, { leaves: 40, stems: 25, triangles: 6, clouds: 3, openReceivers: 1 });
  const groups = Int32Array.from(scene.surfaces, ({ shape, owner }) => (shape === 'blade' ? owner % 4 : -1));
  const directions = waveDirections({ latitudeDeg: 41.3, seed: 51, wave: 0 }).filter((_, d) => d % 9 === 0);
  const input = {
    surfaces: scene.surfaces,
    group: groups,
    groupCount: 4,
    directions,
    ownerCount: 9,
    spacingM: 0.083,
    seed: 51,
    wave: 0,
  };
  const wave = traceLeafWave(input);

  /** Every hit on a leaf as a receiver of its own, followed by brute force. */
  function byBruteForce(keep: Uint8Array): number[] {
    const weights = rayWeights({ waves: [wave] }, light)[0]?.weight ?? new Float64Array();
    const sums = [0, 0, 0, 0];
    const spread = directions.map((direction) => leafPoints(input, direction));
    for (const [d, points] of spread.entries()) {
      const receivers = points.map(({ receiver }) => receiver);
      const passed = receivers.map(() => 1);
      bruteForceTracer(scene.surfaces, receivers)(directions[d]?.toSky as Vec3, (r, s, share) => {
        const owner = scene.surfaces[s]?.owner ?? 0;
        if (owner === fixedOwner || keep[owner] === 1) passed[r] = (passed[r] ?? 0) * share;
      });
      points.forEach(({ group: g }, r) => {
        sums[g] =
          (sums[g] ?? 0) +
          ((weights[d] ?? 0) * wave.rayAreaM2 * (passed[r] ?? 0)) / (wave.groupAreaM2[g] ?? 1);
      });
    }
    return sums;
  }

  it('gives brute force’s light, whoever is kept', () => {
    const ledger = { ownerCount: 9, groupCount: 4, waves: [wave], seed: 51 };
    for (const kept of [
      [1, 1, 1, 1, 1, 1, 1, 1, 1],
      [1, 0, 1, 1, 0, 0, 1, 0, 1],
      [1, 0, 0, 0, 0, 0, 0, 0, 0],
    ]) {
      const keep = Uint8Array.from(kept);
      const expected = byBruteForce(keep);
      leafExposure(ledger, light, keep).forEach(({ share }, g) => {
        expect(share).toBeCloseTo(expected[g] ?? Number.NaN, 7);
      });
    }
  });

  it('is the same whether taken in steps or in one go, and hands over in between', () => {
    const steps = traceLeafWaveSteps(input);
    const done: number[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) done.push(step.value);
    expect(step.value).toEqual(wave);
    expect(done).toHaveLength(Math.floor((directions.length - 1) / 16));
  });

  it('refuses what it cannot trace', () => {
    expect(() => traceLeafWave({ ...input, spacingM: 0 })).toThrow('spacingM must be above 0, got 0');
    expect(() => traceLeafWave({ ...input, ownerCount: 5 })).toThrow(/owner of surface \d+ must be below 5/);
    expect(() => traceLeafWave({ ...input, groupCount: 2 })).toThrow(/group of surface \d+ must be below 2/);
    const loose = scene.surfaces.map((s): Surface => (s.shape === 'cloud' ? { ...s, owner: 3 } : s));
    expect(() => traceLeafWave({ ...input, surfaces: loose })).toThrow(
      'a cloud must be fixed (owner 0), got 3',
    );
  });
});
