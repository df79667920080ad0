import { describe, expect, it } from 'vitest';
import type { Receiver, Surface } from '../../src/geometry/surface.ts';
import { exposure } from '../../src/light/exposure.ts';
import { leafExposure } from '../../src/light/leafExposure.ts';
import { leafOptics } from '../../src/light/leafOptics.ts';
import { leafExposureParts } from '../../src/light/leafParts.ts';
import { exposureParts, type LightParts } from '../../src/light/lightParts.ts';
import { traceLeafWave } from '../../src/light/trace/leafWave.ts';
import { ledgerOf, lightOf, waveOf } from './cells.ts';

const figures = { leafReflectance: 0.09, leafTransmittance: 0.07 };
const optics = leafOptics(figures);
const light = lightOf(0.21);
const ownerCount = 4;

/** A level square leaf so wide that rays a hair above the level alone pass beside it. */
const awning = (y: number, owner: number): Surface => ({
  shape: 'blade',
  owner,
  optics,
  origin: [-1e6, y, -1e6],
  along: [2e6, 0, 0],
  across: [0, 0, 2e6],
  outline: [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ],
});
const sensor = (point: Receiver['point'], normal: Receiver['normal'] = [0, 1, 0]): Receiver => ({
  point,
  normal,
  sides: 'one',
  onSurface: -1,
});
const sum = ({ beam, sky, ground, transmitted, scattered }: LightParts): number =>
  beam + sky + ground + transmitted + scattered;

const surfaces = [awning(1.3, 1), awning(1.9, 2)];
const receivers = [sensor([0.2, 2.7, 0.1]), sensor([0.2, 1.6, 0.1]), sensor([0.2, 0.4, 0.1])];

describe('parts of the light on sensors', () => {
  const ledger = ledgerOf(surfaces, receivers, { seed: 23, waves: 3, ownerCount });

  it('are beam and sky alone in the open', () => {
    const [open] = exposureParts(ledger, light, figures);
    expect(open?.beam).toBeCloseTo(17 / 28, 6);
    expect(open?.sky).toBeCloseTo(11 / 28, 6);
    expect([open?.ground, open?.transmitted, open?.scattered]).toEqual([0, 0, 0]);
  });

  it('hold the bare transmittance of one leaf and of two, and scattering as the rest', () => {
    const [, one, two] = exposureParts(ledger, light, figures);
    expect([one?.beam, one?.sky, two?.beam, two?.sky]).toEqual([0, 0, 0, 0]);
    expect(one?.transmitted).toBeCloseTo(0.07, 6);
    expect(one?.scattered).toBeCloseTo(optics.transmittance - 0.07, 6);
    expect(two?.transmitted).toBeCloseTo(0.07 ** 2, 6);
    expect(two?.scattered).toBeCloseTo(optics.transmittance ** 2 - 0.07 ** 2, 6);
  });

  it('come straight again when the leaf above is gone', () => {
    const parts = exposureParts(ledger, light, figures, undefined, Uint8Array.of(1, 1, 0, 1));
    expect(sum(parts[1] as LightParts)).toBeCloseTo(1, 6);
    expect(parts[1]?.transmitted).toBe(0);
    expect(parts[2]?.transmitted).toBeCloseTo(0.07, 6);
  });

  it('name the ground for a sensor that faces down', () => {
    const down = ledgerOf([], [sensor([0, 1, 0], [0, -1, 0])], { seed: 24, waves: 5, ownerCount });
    const [parts] = exposureParts(down, light, figures);
    expect(parts?.ground).toBeGreaterThan(0.15);
    expect(sum(parts as LightParts)).toBeCloseTo(parts?.ground ?? Number.NaN, 12);
  });

  it('give black leaves no transmitted light and leaves that throw nothing back no scattered light', () => {
    for (const [bare, leaf] of [
      [{ leafReflectance: 0, leafTransmittance: 0 }, 0],
      [{ leafReflectance: 0, leafTransmittance: 0.3 }, 0.3],
      [{ leafReflectance: 0.4, leafTransmittance: 0 }, 0],
    ] as const) {
      const one = [{ ...awning(1.3, 1), optics: leafOptics(bare) }];
      const under = ledgerOf(one, [sensor([0, 0.4, 0])], { seed: 25, waves: 2, ownerCount });
      const [parts] = exposureParts(under, light, bare);
      expect(parts?.transmitted).toBeCloseTo(leaf, 6);
      expect(parts?.scattered).toBeCloseTo(leafOptics(bare).transmittance - leaf, 6);
    }
  });
});

describe('parts of the light on leaves', () => {
  const small = (x: number, y: number, owner: number): Surface => ({
    ...awning(y, owner),
    shape: 'blade',
    outline: [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ],
    origin: [x, y, 0],
    along: [0.31, 0.05, 0],
    across: [0, 0.08, 0.27],
  });
  const leaves = [small(0, 1, 1), small(0.1, 1.15, 2), small(0.05, 1.31, 3), small(0.2, 0.85, 1)];
  const waves = [0, 1, 2].map((wave) =>
    traceLeafWave({
      surfaces: leaves,
      group: Int32Array.from([0, 1, 2, 0]),
      groupCount: 3,
      directions: waveOf(26, wave),
      ownerCount,
      spacingM: 0.04,
      seed: 26,
      wave,
    }),
  );
  const ledger = { ownerCount, groupCount: 3, waves, seed: 26 };

  it.each([undefined, Uint8Array.of(1, 1, 0, 1)])(
    'add up to the light, with transmitted light below leaves and ground on all (keep %s, seed 26)',
    (keep) => {
      const parts = leafExposureParts(ledger, light, figures, keep);
      leafExposure(ledger, light, keep).forEach(({ share, beamShare }, g) => {
        const part = parts[g] as LightParts;
        expect(sum(part)).toBeCloseTo(share, 9);
        expect(part.beam).toBeLessThan(beamShare + 1e-9);
        expect(part.ground).toBeGreaterThan(0.01);
        expect(part.scattered).toBeGreaterThan(0);
        expect(part.transmitted).toBeGreaterThan(4 * part.scattered);
      });
    },
  );
});

it('parts of a sensor among random things add up to its exposure (seed 27)', () => {
  const many = Array.from({ length: 23 }, (_, i) => ({
    ...awning(0.5 + 0.1 * i, 1 + (i % 3)),
    origin: [((i * 7) % 11) * 0.1 - 0.7, 0.5 + 0.1 * i, ((i * 5) % 13) * 0.1 - 0.8] as const,
    along: [0.4, 0.02 * (i % 5), 0] as const,
    across: [0, -0.1, 0.3] as const,
  })) as Surface[];
  const ledger = ledgerOf(many, receivers, { seed: 27, waves: 4, ownerCount });
  const parts = exposureParts(ledger, light, figures);
  exposure(ledger, light).forEach(({ share }, r) => {
    expect(sum(parts[r] as LightParts)).toBeCloseTo(share, 12);
  });
  expect(parts[2]?.transmitted).toBeGreaterThan(0.005);
});
