import { describe, expect, it } from 'vitest';
import { opaque, type Receiver, type Surface } from '../../../src/geometry/surface.ts';
import { up } from '../../../src/geometry/vec.ts';
import type { Direction } from '../../../src/light/directions.ts';
import type { Ledger } from '../../../src/light/ledger.ts';
import { clearShares } from '../../../src/light/look/clearShares.ts';
import { skyPatches } from '../../../src/light/sky/cells.ts';
import { waveDirections } from '../../../src/light/sky/waveDirections.ts';
import { traceWave } from '../../../src/light/trace/wave.ts';

const latitudeDeg = 44.3;
const leafOwner = 1;

const sensorAt = (x: number, y: number, z: number): Receiver => ({
  point: [x, y, z],
  normal: up,
  sides: 'one',
  onSurface: -1,
});

function ledgerOf(surfaces: readonly Surface[], receivers: readonly Receiver[], seed: number): Ledger {
  const waves = [0, 1, 2, 3, 4, 5].map((wave) =>
    traceWave({
      surfaces,
      receivers,
      directions: waveDirections({ latitudeDeg, seed, wave }),
      ownerCount: 2,
    }),
  );
  return { ownerCount: 2, receiverCount: receivers.length, waves, seed };
}

const solidAngle = ({ kind, cell }: Direction): number =>
  kind === 'sky' ? (skyPatches[cell]?.solidAngleSr as number) : 0;
const cosine = (direction: Direction): number => solidAngle(direction) * direction.toSky[1];
const sun = ({ kind }: Direction): number => (kind === 'beam' ? 1 : 0);

/** A level square sheet of half side 500 m, 0.7 m above the ground, with its edge over x = 0.3. */
const lid = (transmittance: number, owner: number): Surface => ({
  shape: 'blade',
  owner,
  optics: { transmittance, reflectance: 0 },
  origin: [0.3, 0.7, 0],
  along: [1000, 0, 0],
  across: [0, 0, 1000],
  outline: [
    [0, -0.5],
    [1, -0.5],
    [1, 0.5],
    [0, 0.5],
  ],
});

describe('what is seen straight from a level sensor', () => {
  it('is everything in the open, to the last 6 digits, seed 31', () => {
    const shares = clearShares(ledgerOf([], [sensorAt(0, 0, 0)], 31), [sun, solidAngle, cosine]);
    for (const share of shares) expect(share[0]).toBeCloseTo(1, 6);
  });

  it.each([41, 42, 43])(
    'is by solid angle another part of the sky than by the cosine, each as the closed form has it, seed %i',
    (seed) => {
      // A half plane at height 0.7 whose edge lies 0.3 to the east hides the sky from the zenith angle 23.2 degrees on,
      // eastwards: a wedge. Its solid angle share is (90 - 23.2) / 180, its cosine share (1 - sin 23.2 deg) / 2.
      const edgeRad = Math.atan2(0.3, 0.7);
      const [, solid, cos] = clearShares(ledgerOf([lid(0, leafOwner)], [sensorAt(0, 0, 0)], seed), [
        sun,
        solidAngle,
        cosine,
      ]);
      // Six random rays in each of 145 patches, of which some 20 are cut by the edge: 0.0035 of standard error.
      expect(Math.abs((solid?.[0] as number) - (1 - (Math.PI / 2 - edgeRad) / Math.PI))).toBeLessThan(0.012);
      expect(Math.abs((cos?.[0] as number) - (1 - (1 - Math.sin(edgeRad)) / 2))).toBeLessThan(0.012);
      expect((cos?.[0] as number) - (solid?.[0] as number)).toBeGreaterThan(0.03);
    },
  );

  it('counts a leaf that lets light through as shade, but what is fixed and has gaps by its gaps; seed 51', () => {
    const at = [sensorAt(40, 0, 0)];
    const leaf = clearShares(ledgerOf([lid(0.5, leafOwner)], at, 51), [solidAngle]);
    const net = clearShares(ledgerOf([lid(0.5, 0)], at, 51), [solidAngle]);
    expect(leaf[0]?.[0]).toBeLessThan(0.1);
    expect(net[0]?.[0]).toBeCloseTo(0.5 + 0.5 * (leaf[0]?.[0] as number), 6);
  });

  it('takes away what is not kept, and means over a group; seed 61', () => {
    const wall: Surface = { ...lid(0, leafOwner), optics: opaque };
    const ledger = ledgerOf([wall], [sensorAt(-3, 0.2, 0), sensorAt(1.7, 0.2, 0)], 61);
    const each = clearShares(ledger, [sun]);
    const both = clearShares(ledger, [sun], {
      grouping: { count: 1, group: Int32Array.of(0, 0) },
    });
    expect(both[0]?.[0]).toBeCloseTo(((each[0]?.[0] as number) + (each[0]?.[1] as number)) / 2, 12);
    const bare = clearShares(ledger, [sun], { keep: Uint8Array.of(1, 0) });
    expect(Array.from(bare[0] as Float64Array).every((share) => Math.abs(share - 1) < 1e-6)).toBe(true);
  });
});
