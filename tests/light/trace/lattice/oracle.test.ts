import { describe, expect, it } from 'vitest';
import type { Receiver, Surface } from '../../../../src/geometry/surface.ts';
import { dot, type Vec3 } from '../../../../src/geometry/vec.ts';
import { bruteForceTracer } from '../../../../src/light/trace/bruteForce.ts';
import { plainCaster } from '../../../../src/light/trace/lattice/caster.ts';
import type { SortedHits } from '../../../../src/light/trace/lattice/hits.ts';
import { latticeOver } from '../../../../src/light/trace/lattice/lattice.ts';
import { makeLatticeScene } from '../../../../src/light/trace/lattice/scene.ts';
import type { TraceDirection } from '../../../../src/light/tracer.ts';
import { sampleIds } from '../../../document/sampleFiles.ts';
import { realCanopy } from '../realCanopy.ts';
import { anyDirection, type SceneSize, sceneOf, stream } from '../scene.ts';
import { pointOf } from './points.ts';

const axes: Vec3[] = [
  [0, 1, 0],
  [0, -1, 0],
  [1, 0, 0],
  [0, 0, -1],
  [0.6, 0.8, 0],
];

/** Meshes of one triangle each, so that a triangle is known by its surface. */
const split = (surfaces: readonly Surface[]): Surface[] =>
  surfaces.flatMap((surface): Surface[] => {
    if (surface.shape !== 'mesh') return [surface];
    const corners = Array.from(surface.triangles);
    return Array.from({ length: corners.length / 9 }, (_, i) => ({
      ...surface,
      triangles: corners.slice(9 * i, 9 * i + 9),
    }));
  });

const isSheet = ({ shape }: Surface): boolean => shape === 'blade' || shape === 'mesh';

/** For each receiver the surfaces that brute force meets, as sorted text. */
function blockers(
  makeTrace: (receivers: Receiver[]) => TraceDirection,
  receivers: Receiver[],
  toSky: Vec3,
): string[] {
  const met: number[][] = receivers.map(() => []);
  makeTrace(receivers)(toSky, (receiver, surface) => met[receiver]?.push(surface));
  return met.map((list) => list.sort((a, b) => a - b).join(' '));
}

interface Compared {
  /** Rays, and hits on leaves, that were compared. */
  readonly rays: number;
  readonly hits: number;
  /** Descriptions of those that differ. */
  readonly differ: string[];
}

/** Along every ray: all things met; then, from each leaf hit on, all things before it. */
function compare(all: readonly Surface[], toSky: Vec3, spacingM: number, shift: [number, number]): Compared {
  const surfaces = all.filter(({ shape }) => shape !== 'cloud');
  const group = Int32Array.from(surfaces, (s) => (isSheet(s) ? 0 : -1));
  const scene = makeLatticeScene({ surfaces, group, groupCount: 1 });
  const lattice = latticeOver(scene, toSky, spacingM, ...shift);
  const hits: SortedHits = plainCaster(scene).cast(lattice);
  const [receivers, expected]: [Receiver[], string[]] = [[], []];
  const receiver = (point: Vec3, onSurface: number): Receiver => ({
    point,
    normal: [0, 1, 0],
    sides: 'both',
    onSurface,
  });
  const surfacesOf = (from: number, to: number): string =>
    Array.from(hits.thing.subarray(from, to), (thing) => scene.surface[thing] as number)
      .sort((a, b) => a - b)
      .join(' ');
  const rays = lattice.columns * lattice.rows;
  for (let ray = 0; ray < rays; ray++) {
    const [from, to] = [hits.start[ray] as number, hits.start[ray + 1] as number];
    receivers.push(receiver(pointOf(lattice, ray, -100), -1));
    expected.push(surfacesOf(from, to));
    for (let k = from; k < to; k++) {
      const surface = scene.surface[hits.thing[k] as number] as number;
      if (!isSheet(surfaces[surface] as Surface)) continue;
      receivers.push(receiver(pointOf(lattice, ray, hits.ahead[k] as number), surface));
      expected.push(surfacesOf(from, k));
    }
  }
  const found = blockers((list) => bruteForceTracer(surfaces, list), receivers, toSky);
  const differ = found.flatMap((list, i) =>
    list === expected[i]
      ? []
      : [`${JSON.stringify(receivers[i])}: brute force ${list}, lattice ${expected[i]}`],
  );
  return { rays, hits: receivers.length - rays, differ };
}

function compareMany(surfaces: readonly Surface[], directions: readonly Vec3[], spacingM: number): Compared {
  const draw = stream(977);
  const all = directions.map((toSky) => compare(surfaces, toSky, spacingM, [draw(), draw()]));
  const sum = (of: (c: Compared) => number): number => all.reduce((total, c) => total + of(c), 0);
  return { rays: sum((c) => c.rays), hits: sum((c) => c.hits), differ: all.flatMap((c) => c.differ) };
}

const none = { leaves: 0, stems: 0, triangles: 0, clouds: 0, openReceivers: 0 };
const scenes: [string, number, SceneSize, number][] = [
  ['triangles', 811, { ...none, triangles: 90 }, 0.107],
  ['blades', 812, { ...none, leaves: 110 }, 0.071],
  ['blades and stems', 813, { ...none, leaves: 60, stems: 70 }, 0.061],
  ['everything', 814, { ...none, leaves: 50, stems: 40, triangles: 15, clouds: 2 }, 0.093],
];

// A difference would need a ray within some 1e-14 m of an edge or two hits as near to each other: none is allowed.
describe('the lattice of rays', () => {
  it.each(scenes)(
    'has the hits and blockers of brute force on every ray: %s (seed %i)',
    (_, seed, size, spacingM) => {
      const draw = stream(seed + 1);
      const directions = [...axes, ...Array.from({ length: 9 }, () => anyDirection(draw))];
      const { rays, hits, differ } = compareMany(split(sceneOf(seed, size).surfaces), directions, spacingM);
      expect(rays).toBeGreaterThan(2500);
      expect(hits).toBeGreaterThan(700);
      expect(differ).toEqual([]);
    },
  );

  it.each(sampleIds)('has them on the leaves of the sample tree %s too (seed 821)', (id) => {
    const draw = stream(821);
    const { surfaces } = realCanopy(id);
    const { hits, differ } = compareMany(
      split(surfaces),
      Array.from({ length: 2 }, () => anyDirection(draw)),
      0.157,
    );
    expect(hits).toBeGreaterThan(30);
    expect(differ).toEqual([]);
  });

  it('tells where along the ray the hit lies (seed 831)', () => {
    const { surfaces } = sceneOf(831, { ...none, leaves: 7 });
    const scene = makeLatticeScene({ surfaces, group: new Int32Array(7), groupCount: 1 });
    const toSky = anyDirection(stream(832));
    const lattice = latticeOver(scene, toSky, 0.021, 0.3, 0.8);
    const { start, ahead, thing } = plainCaster(scene).cast(lattice);
    let checked = 0;
    for (let ray = 0; ray < lattice.columns * lattice.rows; ray++) {
      for (let k = start[ray] as number; k < (start[ray + 1] as number); k++) {
        const blade = surfaces[scene.surface[thing[k] as number] as number];
        if (blade?.shape !== 'blade') throw new Error('only blades were sown');
        const [x, y, z] = pointOf(lattice, ray, ahead[k] as number);
        const { along: a, across: c, origin: o } = blade;
        const normal: Vec3 = [
          a[1] * c[2] - a[2] * c[1],
          a[2] * c[0] - a[0] * c[2],
          a[0] * c[1] - a[1] * c[0],
        ];
        expect(dot([x - o[0], y - o[1], z - o[2]], normal)).toBeCloseTo(0, 14);
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(20);
  });
});
