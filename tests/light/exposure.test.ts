import { describe, expect, it } from 'vitest';
import type { Receiver, Surface } from '../../src/geometry/surface.ts';
import type { CellLight } from '../../src/light/directions.ts';
import { exposure, type Grouping } from '../../src/light/exposure.ts';
import { irradiance } from '../../src/light/irradiance.ts';
import type { KeepSet } from '../../src/light/ledger.ts';
import { bruteForceTracer } from '../../src/light/trace/bruteForce.ts';
import { traceWave } from '../../src/light/trace/wave.ts';
import { ledgerOf, lightOf, waveOf } from './cells.ts';
import { sceneOf, stream } from './trace/scene.ts';

const size = { leaves: 31, stems: 17, triangles: 4, clouds: 1, openReceivers: 23 };
const ownerCount = 9;

function randomKeep(seed: number): KeepSet {
  const draw = stream(seed);
  return Uint8Array.from({ length: ownerCount }, (_, owner) => (owner === 0 || draw() < 0.6 ? 1 : 0));
}

/** Exposure by definition: plain tracing of the surfaces that stand, scaled by the open level sums. */
function directShare(
  surfaces: readonly Surface[],
  receivers: readonly Receiver[],
  keep: KeepSet,
  light: CellLight,
  [seed, waves]: [number, number],
): Float64Array {
  const total = new Float64Array(receivers.length);
  for (let wave = 0; wave < waves; wave++) {
    const directions = waveOf(seed, wave);
    for (const kind of ['sky', 'beam', 'ground'] as const) {
      const lights = directions
        .filter((d) => d.kind === kind)
        .map((d) => ({ toSky: d.toSky, energy: light[kind][d.cell] ?? Number.NaN }));
      const open = lights.reduce((sum, l) => sum + l.energy * Math.max(0, l.toSky[1]), 0);
      const closed = { sky: light.openDiffuseParMolM2Day, beam: light.openBeamParMolM2Day, ground: 0 }[kind];
      const scale = kind === 'ground' ? 1 : closed / open;
      const got = irradiance({ surfaces, receivers, lights, keep }, bruteForceTracer);
      got.forEach((value, r) => {
        total[r] = (total[r] ?? 0) + (value * scale) / light.openSkyParMolM2Day / waves;
      });
    }
  }
  return total;
}

describe('exposure', () => {
  it.each([11, 12, 13])('equals direct tracing for a random keep-set (seed %i)', (seed) => {
    const { surfaces, receivers } = sceneOf(seed, size);
    const ledger = ledgerOf(surfaces, receivers, { seed, waves: 3, ownerCount });
    const keep = randomKeep(seed);
    const light = lightOf(0.2);
    const expected = directShare(surfaces, receivers, keep, light, [seed, 3]);
    exposure(ledger, light, undefined, keep).forEach(({ share, beamShare, diffuseShare }, r) => {
      // Single precision of the ledger's shares and cosines: 6e-8 each.
      expect(Math.abs(share - (expected[r] ?? Number.NaN))).toBeLessThan(1e-6);
      expect(beamShare + diffuseShare).toBeCloseTo(share, 12);
    });
  });

  it('gives an open level sensor exactly 1 with no error, whatever the rays', () => {
    const receivers: Receiver[] = [
      { point: [0.3, 1.1, -0.7], normal: [0, 1, 0], sides: 'one', onSurface: -1 },
    ];
    const [got] = exposure(ledgerOf([], receivers, { seed: 5, waves: 4, ownerCount: 1 }), lightOf(0.23));
    expect(got?.share).toBeCloseTo(1, 6);
    expect(got?.standardError).toBeLessThan(1e-6);
    expect(got?.beamShare).toBeCloseTo(17 / 28, 6);
  });

  it('lets the ground light a sensor that faces down, by the ground reflectance', () => {
    const receivers: Receiver[] = [{ point: [0, 1, 0], normal: [0, -1, 0], sides: 'one', onSurface: -1 }];
    const [got] = exposure(ledgerOf([], receivers, { seed: 8, waves: 150, ownerCount: 1 }), lightOf(0.23));
    expect(got?.beamShare).toBe(0);
    expect(Math.abs((got?.share ?? 0) - 0.23)).toBeLessThan(3 * (got?.standardError ?? 0));
    expect(got?.standardError).toBeLessThan(0.01);
  });

  it('takes the weighted mean over the receivers of a group and leaves out those of none', () => {
    const { surfaces, receivers } = sceneOf(14, size);
    const ledger = ledgerOf(surfaces, receivers, { seed: 14, waves: 2, ownerCount });
    const light = lightOf(0.1);
    const each = exposure(ledger, light);
    const share = (r: number): number => each[r]?.share ?? Number.NaN;
    const group = new Int32Array(receivers.length).fill(-1);
    [group[3], group[7], group[20]] = [1, 1, 0];
    const weight = new Float64Array(receivers.length).fill(2);
    [weight[3], weight[7], weight[20]] = [0.5, 1.5, 4];
    const grouping: Grouping = { count: 3, group, weight };
    const got = exposure(ledger, light, grouping);
    expect(got[0]?.share).toBeCloseTo(share(20), 12);
    expect(got[1]?.share).toBeCloseTo(0.25 * share(3) + 0.75 * share(7), 12);
    expect(got[2]).toEqual({ share: 0, standardError: 0, beamShare: 0, diffuseShare: 0 });
  });

  it('states a standard error that agrees with the spread over seeds (seeds 1 to 160)', () => {
    const { surfaces, receivers } = sceneOf(15, { ...size, openReceivers: 1 });
    const first = receivers
      .slice(0, 1)
      .map((r): Receiver => ({ ...r, point: [0, 0.4, 0], normal: [0, 1, 0] }));
    const runs = Array.from({ length: 160 }, (_, run) => {
      const ledger = ledgerOf(surfaces, first, { seed: run + 1, waves: 6, ownerCount });
      return exposure(ledger, lightOf(0.2))[0] ?? { share: Number.NaN, standardError: Number.NaN };
    });
    const mean = runs.reduce((sum, { share }) => sum + share, 0) / runs.length;
    const spread = Math.sqrt(
      runs.reduce((sum, { share }) => sum + (share - mean) ** 2, 0) / (runs.length - 1),
    );
    const stated = Math.sqrt(
      runs.reduce((sum, { standardError }) => sum + standardError ** 2, 0) / runs.length,
    );
    expect(spread).toBeGreaterThan(0.003);
    // Spread of 160 runs is known to 1 / sqrt(318) = 5.6 %, the stated mean square to 1 / sqrt(1600) = 2.5 %: band of 3 sigma.
    expect(stated / spread).toBeGreaterThan(0.82);
    expect(stated / spread).toBeLessThan(1.18);
  });

  it('takes the spread of the waves with n - 1 in the denominator, over the root of n (seed 17)', () => {
    const { surfaces, receivers } = sceneOf(17, size);
    const ledger = ledgerOf(surfaces, receivers, { seed: 17, waves: 3, ownerCount });
    const alone = ledger.waves.map((wave) => exposure({ ...ledger, waves: [wave] }, lightOf(0.2)));
    exposure(ledger, lightOf(0.2)).forEach(({ share, standardError }, r) => {
      const values = alone.map((shares) => shares[r]?.share ?? Number.NaN);
      const mean = values.reduce((sum, v) => sum + v, 0) / 3;
      const squares = values.reduce((sum, v) => sum + (v - mean) ** 2, 0);
      expect(share).toBeCloseTo(mean, 12);
      expect(standardError).toBeCloseTo(Math.sqrt(squares / 2 / 3), 12);
    });
    expect(alone[0]?.[0]?.standardError).toBe(0);
  });

  it('counts the beam as sky when no ray of any wave can carry it', () => {
    const receivers: Receiver[] = [{ point: [0, 0, 0], normal: [0, 1, 0], sides: 'one', onSurface: -1 }];
    const ledger = ledgerOf([], receivers, { seed: 3, waves: 2, ownerCount: 1 });
    const light = { ...lightOf(0), beam: new Float64Array(11) };
    const [got] = exposure(ledger, light);
    expect(got?.share).toBeCloseTo(1, 6);
    expect(got?.beamShare).toBe(0);
  });

  it('lets the other waves carry the beam when one has no ray in it', () => {
    const receivers: Receiver[] = [{ point: [0, 0, 0], normal: [0, 1, 0], sides: 'one', onSurface: -1 }];
    const waves = [0, 1, 2].map((wave) => {
      const directions = waveOf(4, wave).filter(({ kind }) => wave !== 1 || kind !== 'beam');
      return traceWave({ surfaces: [], receivers, directions, ownerCount: 1 });
    });
    const [got] = exposure({ ownerCount: 1, receiverCount: 1, waves, seed: 4 }, lightOf(0));
    expect(got?.share).toBeCloseTo(1, 6);
    expect(got?.beamShare).toBeCloseTo(17 / 28, 6);
    expect(got?.standardError).toBeGreaterThan(0.1);
  });

  it('says 0, not NaN, where there is no light at all', () => {
    const receivers: Receiver[] = [{ point: [0, 0, 0], normal: [0, 1, 0], sides: 'one', onSurface: -1 }];
    const ledger = ledgerOf([], receivers, { seed: 3, waves: 2, ownerCount: 1 });
    const dark: CellLight = {
      sky: new Float64Array(63),
      beam: new Float64Array(11),
      ground: new Float64Array(5),
      openSkyParMolM2Day: 0,
      openBeamParMolM2Day: 0,
      openDiffuseParMolM2Day: 0,
    };
    expect(exposure(ledger, dark)[0]?.share).toBe(0);
  });

  it('refuses arrays of the wrong length and light that is not finite', () => {
    const { surfaces, receivers } = sceneOf(16, size);
    const ledger = ledgerOf(surfaces, receivers, { seed: 1, waves: 1, ownerCount });
    expect(() => exposure(ledger, lightOf(0), { count: 1, group: new Int32Array(2) })).toThrow(
      /^exposure: group/,
    );
    expect(() => exposure(ledger, lightOf(0), undefined, new Uint8Array(3))).toThrow(/^exposure: keep/);
    const bad = { ...lightOf(0), sky: new Float64Array(63).fill(Number.NaN) };
    expect(() => exposure(ledger, bad)).toThrow(/^rayWeights: .*got NaN/);
  });
});
