import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Receiver, Surface } from '../../src/geometry/surface.ts';
import { scale, type Vec3 } from '../../src/geometry/vec.ts';
import { turnAboutUpright } from '../../src/geometry/world.ts';
import type { Direction } from '../../src/light/directions.ts';
import { exposure } from '../../src/light/exposure.ts';
import type { Exposure, KeepSet } from '../../src/light/ledger.ts';
import { traceWave } from '../../src/light/trace/wave.ts';
import { lightOf, waveOf } from './cells.ts';
import { grown, type Move, moved, movedReceiver } from './trace/moves.ts';
import { sceneOf, stream } from './trace/scene.ts';

const size = { leaves: 25, stems: 14, triangles: 4, clouds: 0, openReceivers: 14 };
const ownerCount = 9;
const waveCount = 2;
const light = lightOf(0.21);
const seeds = fc.integer({ min: 1, max: 1e6 });

interface Scene {
  readonly surfaces: readonly Surface[];
  readonly receivers: readonly Receiver[];
}

/** Half of the open receivers level, so that both sorts are there. */
function sceneWith(seed: number, clouds = 0): Scene {
  const { surfaces, receivers } = sceneOf(seed, { ...size, clouds });
  return {
    surfaces,
    receivers: receivers.map((r, i) => (i < size.openReceivers / 2 ? { ...r, normal: [0, 1, 0] } : r)),
  };
}

const wavesOf = (seed: number): Direction[][] =>
  Array.from({ length: waveCount }, (_, wave) => waveOf(seed, wave));

function exposures(
  scene: Scene,
  waves: readonly (readonly Direction[])[],
  keep?: KeepSet,
  owners = ownerCount,
) {
  const traced = waves.map((directions) => traceWave({ ...scene, directions, ownerCount: owners }));
  const ledger = { ownerCount: owners, receiverCount: scene.receivers.length, waves: traced, seed: 0 };
  return exposure(ledger, light, undefined, keep);
}

/** Single precision of shares and cosines in the ledger. */
const rounding = 2e-6;

function expectSame(got: readonly Exposure[], expected: readonly Exposure[]): void {
  expect(got).toHaveLength(expected.length);
  got.forEach((exposed, r) => {
    for (const figure of ['share', 'standardError', 'beamShare', 'diffuseShare'] as const) {
      expect(Math.abs(exposed[figure] - (expected[r]?.[figure] ?? Number.NaN)), figure).toBeLessThan(
        rounding,
      );
    }
  });
}

const turned = (waves: readonly (readonly Direction[])[], move: Move): Direction[][] =>
  waves.map((wave) => wave.map((d) => ({ ...d, toSky: move(d.toSky) })));

const movedScene = ({ surfaces, receivers }: Scene, move: Move): Scene => ({
  surfaces: surfaces.map((s) => moved(s, move)),
  receivers: receivers.map((r) => movedReceiver(r, move)),
});

describe('exposure', () => {
  it('never falls anywhere when owners are taken away (seed 511)', () => {
    fc.assert(
      fc.property(seeds, seeds, (seed, choice) => {
        const scene = sceneWith(seed, 1);
        const draw = stream(choice);
        const keep = Uint8Array.from({ length: ownerCount }, (_, o) => (o === 0 || draw() < 0.7 ? 1 : 0));
        const fewer = keep.map((kept, owner) => (owner === 0 || draw() < 0.5 ? kept : 0));
        const waves = wavesOf(seed);
        const before = exposures(scene, waves, keep);
        exposures(scene, waves, fewer).forEach(({ share, beamShare, diffuseShare }, r) => {
          expect(share).toBeGreaterThanOrEqual((before[r]?.share ?? Number.NaN) - 1e-12);
          expect(beamShare).toBeGreaterThanOrEqual((before[r]?.beamShare ?? Number.NaN) - 1e-12);
          expect(diffuseShare).toBeGreaterThanOrEqual((before[r]?.diffuseShare ?? Number.NaN) - 1e-12);
        });
      }),
      { seed: 511, numRuns: 25 },
    );
  });

  it('of a level sensor never passes 1 by more than its error, nor falls below 0 (seed 512)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const got = exposures(sceneWith(seed, 1), wavesOf(seed)).slice(0, size.openReceivers / 2);
        for (const { share, standardError } of got) {
          expect(share).toBeLessThanOrEqual(1 + standardError + rounding);
          expect(share).toBeGreaterThanOrEqual(0);
        }
      }),
      { seed: 512, numRuns: 25 },
    );
  });

  it('does not change when tree, surroundings and sun turn together, by any angle (seed 513)', () => {
    fc.assert(
      fc.property(seeds, fc.double({ min: -360, max: 360, noNaN: true }), (seed, clockwise) => {
        const scene = sceneWith(seed);
        const turn: Move = (v) => turnAboutUpright(v, clockwise);
        const got = exposures(movedScene(scene, turn), turned(wavesOf(seed), turn));
        expectSame(got, exposures(scene, wavesOf(seed)));
      }),
      { seed: 513, numRuns: 25 },
    );
  });

  it('is mirrored when tree, surroundings and sun are, east for west and south for north (seed 514)', () => {
    const mirrors: Move[] = [([x, y, z]) => [-x, y, z], ([x, y, z]) => [x, y, -z]];
    fc.assert(
      fc.property(seeds, fc.constantFrom(...mirrors), (seed, mirror) => {
        const scene = sceneWith(seed, 2);
        const got = exposures(movedScene(scene, mirror), turned(wavesOf(seed), mirror));
        expectSame(got, exposures(scene, wavesOf(seed)));
      }),
      { seed: 514, numRuns: 25 },
    );
  });

  it('does not change when every length grows alike (seed 515)', () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom(2, 0.5, 3.7, 0.011, 640), (seed, factor) => {
        const scene = sceneWith(seed, 2);
        const larger = {
          surfaces: scene.surfaces.map((s) => grown(s, factor)),
          receivers: scene.receivers.map((r) => ({ ...r, point: scale(r.point, factor) })),
        };
        expectSame(exposures(larger, wavesOf(seed)), exposures(scene, wavesOf(seed)));
      }),
      { seed: 515, numRuns: 25 },
    );
  });

  it('does not depend on the order of the surfaces (seed 516)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { surfaces, receivers } = sceneWith(seed, 2);
        const draw = stream(seed);
        const order = surfaces.map((_, i) => ({ i, key: draw() })).toSorted((p, q) => p.key - q.key);
        const place = new Map(order.map(({ i }, now) => [i, now]));
        const shuffled = {
          surfaces: order.map(({ i }) => surfaces[i] as Surface),
          receivers: receivers.map((r) => ({ ...r, onSurface: place.get(r.onSurface) ?? -1 })),
        };
        expectSame(exposures(shuffled, wavesOf(seed)), exposures({ surfaces, receivers }, wavesOf(seed)));
      }),
      { seed: 516, numRuns: 25 },
    );
  });

  it('does not change when a mesh is split between two owners that both stand (seed 517)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const scene = sceneWith(seed);
        const split = scene.surfaces.map(
          (s, i): Surface =>
            s.shape === 'mesh'
              ? { ...s, owner: 1, triangles: Array.from(s.triangles).slice(0, 9) }
              : { ...s, owner: 1 + (i % 8) },
        );
        const others = scene.surfaces.flatMap((s): Surface[] =>
          s.shape === 'mesh' ? [{ ...s, owner: 9, triangles: Array.from(s.triangles).slice(9) }] : [],
        );
        const got = exposures({ ...scene, surfaces: [...split, ...others] }, wavesOf(seed), undefined, 10);
        expectSame(got, exposures(scene, wavesOf(seed)));
      }),
      { seed: 517, numRuns: 25 },
    );
  });

  it('does not change for a receiver when another stands beside it (seed 518)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const scene = sceneWith(seed, 1);
        const all = exposures(scene, wavesOf(seed));
        const alone = { ...scene, receivers: scene.receivers.slice(3, 4) };
        expectSame(exposures(alone, wavesOf(seed)), all.slice(3, 4));
      }),
      { seed: 518, numRuns: 25 },
    );
  });
});

it('a leaf cut into two halves along its midrib shades as the whole leaf does (seed 519)', () => {
  // A ray through the very midrib is in exactly one half.
  const whole = [
    [0, -0.2],
    [0.6, -0.5],
    [1, 0],
    [0.5, 0.4],
    [0, 0.1],
  ] as const;
  const halves = [
    [
      [0, 0],
      [0, -0.2],
      [0.6, -0.5],
      [1, 0],
    ],
    [
      [0, 0],
      [1, 0],
      [0.5, 0.4],
      [0, 0.1],
    ],
  ] as const;
  fc.assert(
    fc.property(seeds, (seed) => {
      const { surfaces, receivers } = sceneWith(seed);
      const leaves = surfaces.filter((s) => s.shape === 'blade');
      const free = receivers.slice(0, size.openReceivers);
      const intact = { receivers: free, surfaces: leaves.map((s) => ({ ...s, outline: whole })) };
      const cut = {
        receivers: free,
        surfaces: leaves.flatMap((s) => halves.map((outline, side) => ({ ...s, outline, owner: 1 + side }))),
      };
      expectSame(exposures(cut, wavesOf(seed)), exposures(intact, wavesOf(seed)));
    }),
    { seed: 519, numRuns: 20 },
  );
});

const overhead: Vec3 = [0, 1, 0];
it('two leaves of one owner on a ray let their shares through one after the other', () => {
  const leaf = (y: number, owner: number, transmittance: number): Surface => ({
    shape: 'blade',
    owner,
    optics: { transmittance, reflectance: 0 },
    origin: [0, y, 0],
    along: [1, 0, 0],
    across: [0, 0, 1],
    outline: [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ],
  });
  const wave = traceWave({
    surfaces: [leaf(1, 2, 0.5), leaf(2, 1, 0.25), leaf(3, 2, 0.125), leaf(4, 0, 0.75)],
    receivers: [{ point: [0.2, 0, 0.3], normal: overhead, sides: 'one', onSurface: -1 }],
    directions: [{ toSky: overhead, kind: 'sky', cell: 0 }],
    ownerCount: 3,
  });
  expect([...wave.rayList]).toEqual([1]);
  expect(Array.from(wave.listVeil, (veil) => wave.veilOwner[veil])).toEqual([0, 1, 2]);
  expect(Array.from(wave.listVeil, (veil) => wave.veilShare[veil])).toEqual([0.75, 0.25, 0.0625]);
});
