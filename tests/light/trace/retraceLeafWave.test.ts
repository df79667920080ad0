import { describe, expect, it } from 'vitest';
import { vaseTree } from '../../../bench/vaseTree.ts';
import type { Surface } from '../../../src/geometry/surface.ts';
import { add, scale, type Vec3 } from '../../../src/geometry/vec.ts';
import type { LeafWave } from '../../../src/light/leafLedger.ts';
import { waveDirections } from '../../../src/light/sky/waveDirections.ts';
import { plainCaster } from '../../../src/light/trace/lattice/caster.ts';
import { fastestCaster } from '../../../src/light/trace/lattice/simdCaster.ts';
import { plainRetracer, retracerWith } from '../../../src/light/trace/leafRetracer.ts';
import { traceLeafWave } from '../../../src/light/trace/leafWave.ts';
import {
  leafRetracing,
  retraceLeafWave,
  retraceLeafWaveSteps,
} from '../../../src/light/trace/retraceLeafWave.ts';
import { fastestRetracer } from '../../../src/light/trace/simdRetracer.ts';
import { lastOf } from '../../../src/light/trace/wave.ts';
import { type Draw, sceneOf, stream } from './scene.ts';

interface Scene {
  readonly surfaces: readonly Surface[];
  readonly group: Int32Array;
  readonly groupCount: number;
  readonly ownerCount: number;
}

const engines = [
  { makeCaster: plainCaster, makeRetracer: plainRetracer },
  { makeCaster: fastestCaster, makeRetracer: retracerWith(fastestCaster) },
  { makeCaster: fastestCaster, makeRetracer: fastestRetracer },
];

function traced(scene: Scene, seed: number, makeCaster = fastestCaster, everyDirection = 11): LeafWave {
  const directions = waveDirections({ latitudeDeg: 43.1, seed, wave: 2 });
  return traceLeafWave(
    {
      ...scene,
      directions: directions.filter((_, d) => d % everyDirection === 0),
      spacingM: 0.057,
      seed,
      wave: 2,
    },
    makeCaster,
  );
}

/** All engines, entry by entry against a trace of all. */
function expectEqual(before: Scene, after: Scene, seed: number): void {
  for (const { makeCaster, makeRetracer } of engines) {
    const wave = traced(before, seed, makeCaster);
    const expected = traced(after, seed, makeCaster);
    expect(retraceLeafWave({ ...after, before, wave }, makeRetracer)).toEqual(expected);
  }
}

const moved = (surface: Surface, by: Vec3): Surface => {
  switch (surface.shape) {
    case 'blade':
      return { ...surface, origin: add(surface.origin, by) };
    case 'stem':
      return { ...surface, from: add(surface.from, by), to: add(surface.to, by) };
    case 'mesh':
      return { ...surface, triangles: Array.from(surface.triangles, (x, k) => x + by[(k % 3) as 0 | 1 | 2]) };
    case 'cloud':
      return { ...surface, centre: add(surface.centre, by) };
  }
};

const someWay = (draw: Draw, sizeM: number): Vec3 => [
  (draw() - 0.5) * sizeM,
  (draw() - 0.5) * sizeM,
  (draw() - 0.5) * sizeM,
];

const withOwnersMoved = (scene: Scene, owners: ReadonlySet<number>, by: Vec3): Scene => ({
  ...scene,
  surfaces: scene.surfaces.map((s) => (owners.has(s.owner) ? moved(s, by) : s)),
});

/** Shoots that are gone leave no gap: owners and groups are numbered anew. */
function without(scene: Scene, owners: ReadonlySet<number>): Scene {
  const left = Array.from({ length: scene.ownerCount }, (_, o) => o).filter((o) => !owners.has(o));
  const numberOf = new Map(left.map((o, k) => [o, k]));
  const stays = Array.from(scene.surfaces.keys()).filter((i) => numberOf.has(scene.surfaces[i]?.owner ?? -1));
  const surfaces = stays.map((i): Surface => {
    const surface = scene.surfaces[i] as Surface;
    return { ...surface, owner: numberOf.get(surface.owner) as number };
  });
  const group = stays.map((i) =>
    (scene.group[i] as number) < 0 ? -1 : (surfaces[stays.indexOf(i)]?.owner ?? 0) - 1,
  );
  return { surfaces, group: Int32Array.from(group), groupCount: left.length - 1, ownerCount: left.length };
}

function vase(leaves: number, seed: number): Scene {
  const { surfaces, group, shootCount, ownerCount } = vaseTree(leaves, seed);
  return { surfaces, group, groupCount: shootCount, ownerCount };
}

const someOwners = (draw: Draw, { ownerCount }: Scene, count: number): Set<number> =>
  new Set(Array.from({ length: count }, () => 1 + Math.floor((ownerCount - 1) * draw())));

describe('a wave brought up to date is that of a full trace, entry by entry', () => {
  it.each([1, 2, 3])('on a vase tree whose shoots move a little, and far (seed 95%i)', (n) => {
    const draw = stream(950 + n);
    const before = vase(230, 950 + n);
    for (const sizeM of [0.02, 3]) {
      expectEqual(
        before,
        withOwnersMoved(before, someOwners(draw, before, n), someWay(draw, sizeM)),
        950 + n,
      );
    }
  });

  it.each([1, 2, 3])('when shoots go, when they come, when both happen (seed 96%i)', (n) => {
    const draw = stream(960 + n);
    const whole = vase(210, 960 + n);
    const [some, others] = [
      without(whole, someOwners(draw, whole, n)),
      without(whole, someOwners(draw, whole, 2)),
    ];
    expectEqual(whole, some, 960 + n);
    expectEqual(some, whole, 960 + n);
    expectEqual(some, others, 960 + n);
  });

  it('when a limb moves, nothing moves, everything moves (seed 971)', () => {
    const before = vase(180, 971);
    const limb = new Set(Array.from({ length: 6 }, (_, k) => k + 3));
    expectEqual(before, withOwnersMoved(before, limb, [0.11, 0.07, -0.13]), 971);
    expectEqual(before, structuredClone(before), 971);
    expectEqual(before, withOwnersMoved(before, new Set(Array(99).keys()), [0.2, 0.1, 0.05]), 971);
  });

  it.each([981, 982, 983, 984])(
    'among every shape, clouds or none, in several changes one upon the other (seed %i)',
    (seed) => {
      const draw = stream(seed);
      const clouds = seed % 2 === 0 ? 0 : 2;
      const { surfaces } = sceneOf(seed, { leaves: 60, stems: 25, triangles: 8, clouds, openReceivers: 0 });
      const group = Int32Array.from(surfaces, ({ shape, owner }) =>
        shape === 'blade' ? owner % 4 : shape === 'mesh' ? owner % 3 : -1,
      );
      let before: Scene = { surfaces, group, groupCount: 4, ownerCount: 9 };
      for (let step = 0; step < 4; step++) {
        const changed = before.surfaces.map((s) =>
          draw() < 0.05 && (s.shape !== 'cloud' || step === 3) ? moved(s, someWay(draw, 0.4)) : s,
        );
        const after = { ...before, surfaces: changed };
        expectEqual(before, after, seed);
        before = after;
      }
    },
  );

  it('when groups part, leaves gather no more, or all leaves are gone (seed 991)', () => {
    const before = vase(90, 991);
    const parted = { ...before, group: before.group.map((g, i) => (g === 2 && i % 2 === 0 ? 4 : g)) };
    expectEqual(before, parted, 991);
    const dark = { ...before, group: before.group.map((g) => (g === 3 ? -1 : g)) };
    expectEqual(before, dark, 991);
    expectEqual(dark, before, 991);
    const bare = { ...before, surfaces: [], group: new Int32Array() };
    expectEqual(before, bare, 991);
    expectEqual(bare, before, 991);
  });
});

/** Towards one of the directions that `traced` takes, so that it is seen end-on from there. */
function stemAlongRays(seed: number, from: Vec3, owner: number): Surface {
  const { toSky } = waveDirections({ latitudeDeg: 43.1, seed, wave: 2 })[22] ?? { toSky: [0, 1, 0] as Vec3 };
  const to = add(from, scale(toSky, 0.3));
  const optics = { transmittance: 0, reflectance: 0 };
  return { shape: 'stem', owner, optics, from, to, fromRadiusM: 0.05, toRadiusM: 0.04 };
}

describe('stems seen end-on', () => {
  it('stand, come and go (seed 985)', () => {
    const bare = vase(130, 985);
    const withStems = (...stems: Surface[]): Scene => ({
      ...bare,
      surfaces: [...bare.surfaces, ...stems],
      group: Int32Array.from([...bare.group, ...stems.map(() => -1)]),
    });
    const [low, high] = [stemAlongRays(985, [0.1, 0.6, 0], 2), stemAlongRays(985, [-0.1, 1.2, 0.2], 3)];
    expectEqual(bare, withStems(low, high), 985);
    expectEqual(withStems(low, high), withStems(high), 985);
    expectEqual(withStems(low), withOwnersMoved(withStems(low), new Set([2, 5]), [0.06, -0.02, 0.03]), 985);
  });
});

describe('bringing a wave up to date', () => {
  const before = vase(150, 992);
  const after = withOwnersMoved(before, new Set([4]), [0.03, 0.02, 0.01]);
  const wave = traced(before, 992, fastestCaster, 7);

  it('hands over in between, and gives the same', () => {
    const steps = retraceLeafWaveSteps({ ...after, before, wave });
    const done: number[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) done.push(step.value);
    expect(step.value).toEqual(retraceLeafWave({ ...after, before, wave }));
    expect(done).toHaveLength(Math.floor((wave.directions.length - 1) / 16));
  });

  it('does several waves with what was prepared once', () => {
    const waves = [992, 993, 994].map((seed) => traced(before, seed, fastestCaster, 9));
    for (const { makeRetracer } of engines) {
      const bringUpToDate = leafRetracing({ ...after, before }, makeRetracer);
      const got = waves.map((one) => lastOf(bringUpToDate(one)));
      expect(got).toEqual([992, 993, 994].map((seed) => traced(after, seed, fastestCaster, 9)));
    }
  });

  it('refuses owners and groups out of range', () => {
    const input = { ...after, before, wave };
    expect(() => retraceLeafWave({ ...input, ownerCount: 3 })).toThrow(
      /owner of surface \d+ must be below 3/,
    );
    expect(() => retraceLeafWave({ ...input, groupCount: 3 })).toThrow(
      /group of surface \d+ must be below 3/,
    );
  });
});
