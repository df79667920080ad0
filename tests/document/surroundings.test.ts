import { describe, expect, it } from 'vitest';
import { surroundingSurfaces } from '../../src/document/surroundings.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { soilHeightM, stanceOf } from '../../src/document/views.ts';
import type { Mesh, Receiver, Surface } from '../../src/geometry/surface.ts';
import { cross, dot, length, sub, type Vec3 } from '../../src/geometry/vec.ts';
import { pathInCloudM } from '../../src/light/trace/meet.ts';
import { parallelBeamTracer } from '../../src/light/trace/parallelBeam.ts';
import { sampleFile } from './sampleFiles.ts';

type Thing = TreeFile['site']['surroundings'][number];

function withThings(...surroundings: Thing[]): TreeFile {
  const file = sampleFile('old-fig-in-ground');
  return { ...file, site: { ...file.site, surroundings } };
}

const corners = ({ triangles }: Mesh): Vec3[] =>
  Array.from(
    { length: triangles.length / 3 },
    (_, i) => [triangles[3 * i], triangles[3 * i + 1], triangles[3 * i + 2]] as Vec3,
  );

const meshOf = (surface: Surface | undefined): Mesh => {
  if (surface?.shape !== 'mesh') throw new Error('no mesh');
  return surface;
};

/** Volume by the divergence theorem: positive when all triangles are seen anticlockwise from outside. */
function volumeM3(mesh: Mesh): number {
  const points = corners(mesh);
  let six = 0;
  for (let i = 0; i < points.length; i += 3) {
    six += dot(points[i] as Vec3, cross(points[i + 1] as Vec3, points[i + 2] as Vec3));
  }
  return six / 6;
}

function areaM2(mesh: Mesh): number {
  const points = corners(mesh);
  let twice = 0;
  for (let i = 0; i < points.length; i += 3) {
    const [a, b, c] = points.slice(i, i + 3) as [Vec3, Vec3, Vec3];
    twice += length(cross(sub(b, a), sub(c, a)));
  }
  return twice / 2;
}

describe('surroundings as surfaces', () => {
  const wall: Thing = {
    kind: 'wall',
    name: 'Wall',
    from: [1, 2],
    to: [4, 6],
    heightM: 2.3,
    thicknessM: 0.4,
    reflectance: 0.37,
  };

  it('stands a wall on the line between its ends, half its thickness on either side', () => {
    const mesh = meshOf(surroundingSurfaces(withThings(wall))[0]);
    expect(volumeM3(mesh)).toBeCloseTo(5 * 0.4 * 2.3, 9);
    expect(areaM2(mesh)).toBeCloseTo(2 * (5 * 0.4 + 5 * 2.3 + 0.4 * 2.3), 9);
    expect(mesh.optics).toEqual({ transmittance: 0, reflectance: 0.37 });
    const across: Vec3 = [0.8, 0, 0.6];
    const along: Vec3 = [0.6, 0, -0.8];
    for (const corner of corners(mesh)) {
      const fromStart = sub(corner, [1, 0, -2]);
      expect(Math.abs(dot(fromStart, across))).toBeCloseTo(0.2, 9);
      expect([0, 5].some((end) => Math.abs(dot(fromStart, along) - end) < 1e-9)).toBe(true);
      expect([0, 2.3]).toContain(corner[1]);
    }
  });

  it('turns a box clockwise seen from above', () => {
    const box: Thing = {
      kind: 'box',
      name: 'Shed',
      centre: [2, 3],
      sizeM: [4, 1, 1.7],
      turnedDeg: 90,
      reflectance: 0.2,
    };
    const mesh = meshOf(surroundingSurfaces(withThings(box))[0]);
    expect(volumeM3(mesh)).toBeCloseTo(4 * 1.7, 9);
    const turned = meshOf(surroundingSurfaces(withThings({ ...box, turnedDeg: 10 }))[0]);
    // The east end of the long side goes south, to larger z: its four corners lie about 2 m east of the middle.
    const southmost = (points: Vec3[]) => Math.max(...points.map((c) => c[2]));
    expect(southmost(corners(turned).filter((c) => c[0] > 3.5))).toBeCloseTo(
      -3 + 2 * Math.sin(Math.PI / 18) + 0.5 * Math.cos(Math.PI / 18),
      9,
    );
    expect(southmost(corners(turned).filter((c) => c[0] < 0.5))).toBeLessThan(-2.8);
    expect(Math.max(...corners(mesh).map((c) => c[2]))).toBeCloseTo(-3 + 2, 9);
    expect(Math.max(...corners(mesh).map((c) => c[0]))).toBeCloseTo(2.5, 9);
  });

  it('puts a gable on a box, its ridge along the first size', () => {
    const box: Thing = {
      kind: 'box',
      name: 'House',
      centre: [2, 3],
      sizeM: [4, 3, 2],
      turnedDeg: 20,
      reflectance: 0.2,
      ridgeHeightM: 3.5,
    };
    const mesh = meshOf(surroundingSurfaces(withThings(box))[0]);
    // The flat top stays inside, seen by nobody: the roof adds a prism without its floor.
    const ridge = corners(mesh).filter((c) => c[1] === 3.5);
    for (const [x, , z] of ridge) {
      expect(Math.hypot(x - 2, z + 3)).toBeCloseTo(2, 9);
      expect(Math.abs((z + 3) * Math.cos(Math.PI / 9) - (x - 2) * Math.sin(Math.PI / 9))).toBeLessThan(1e-9);
    }
    expect(ridge.length).toBeGreaterThan(0);
    const floorless = (4 * 3 * 1.5) / 2;
    const coneFromOrigin = volumeM3(mesh) - 4 * 3 * 2;
    // Without its floor the roof's cone to the origin counts the prism less a third of floor x height of the eaves.
    expect(coneFromOrigin).toBeCloseTo(floorless + (4 * 3 * 2) / 3, 9);
  });

  it('fills a hedge with leaves from the ground up, on the line between its ends', () => {
    const hedge: Thing = {
      kind: 'hedge',
      name: 'Hedge',
      from: [1, 2],
      to: [4, 6],
      heightM: 1.7,
      thicknessM: 0.8,
      leafAreaDensityM2M3: 3,
    };
    const cloud = surroundingSurfaces(withThings(hedge))[0];
    if (cloud?.shape !== 'cloud') throw new Error('no cloud');
    expect(cloud).toMatchObject({ form: 'box', owner: 0, centre: [2.5, 0.85, -4], extinctionPerM: 1.5 });
    expect(cloud.halfSizeM).toEqual([2.5, 0.85, 0.4]);
    // From inside along its line there are 2.5 m of it, across it 0.4 m.
    expect(pathInCloudM(cloud, cloud.centre, [0.6, 0, -0.8])).toBeCloseTo(2.5, 9);
    expect(pathInCloudM(cloud, cloud.centre, [0.8, 0, 0.6])).toBeCloseTo(0.4, 9);
  });

  it('lets the open share of a fence through square on, its square at 60 degrees to it, nothing without gaps', () => {
    const fence: Thing = {
      kind: 'fence',
      name: 'Fence',
      from: [-5, 2],
      to: [5, 2],
      heightM: 2,
      thicknessM: 0.05,
      openFraction: 0.4,
    };
    const share = (thing: Thing, toSky: Vec3): number => {
      let passed = 1;
      const receiver: Receiver = { point: [0, 1, 0], normal: toSky, sides: 'one', onSurface: -1 };
      parallelBeamTracer(surroundingSurfaces(withThings(thing)), [receiver])(toSky, (_r, _s, one) => {
        passed *= one;
      });
      return passed;
    };
    expect(share(fence, [0, 0, -1])).toBeCloseTo(0.4, 9);
    expect(share(fence, [Math.sqrt(0.75), 0, -0.5])).toBeCloseTo(0.16, 9);
    expect(share({ ...fence, openFraction: 1 }, [0, 0, -1])).toBe(1);
    expect(share({ ...fence, openFraction: 0 }, [0, 0, -1])).toBe(0);
    expect(share(fence, [0, 0, 1])).toBe(1);
  });

  it('makes a crown a cloud that dims by half its leaf area density', () => {
    const crown: Thing = {
      kind: 'crown',
      name: 'Crown',
      centre: [2.1, -1.3],
      centreHeightM: 3.2,
      halfSizeM: [1, 2, 3],
      leafAreaDensityM2M3: 1.4,
    };
    expect(surroundingSurfaces(withThings(crown))).toEqual([
      {
        shape: 'cloud',
        owner: 0,
        optics: { transmittance: 0, reflectance: 0 },
        centre: [2.1, 3.2, 1.3],
        halfSizeM: [1, 3, 2],
        extinctionPerM: 0.7,
      },
    ]);
  });

  it('stands the pot under the tree, with its soil where the trunk begins', () => {
    const file = sampleFile('young-whip');
    const pot = meshOf(surroundingSurfaces(file)[0]);
    const { foot } = stanceOf(file);
    expect(foot).toEqual([0.2, 0.28, -0.4]);
    const points = corners(pot);
    const middle = points.filter((p) => Math.hypot(p[0] - foot[0], p[2] - foot[2]) < 1e-9);
    expect(middle.length).toBeGreaterThan(0);
    for (const point of middle) expect(point[1]).toBeCloseTo(soilHeightM(file), 12);
    const radius = (p: Vec3) => Math.hypot(p[0] - foot[0], p[2] - foot[2]);
    expect(Math.max(...points.map(radius))).toBeCloseTo(0.165, 9);
    expect(Math.max(...points.filter((p) => p[1] === 0).map(radius))).toBeCloseTo(0.13, 9);
    expect(Math.max(...points.map((p) => p[1]))).toBe(0.31);
  });

  it('has no pot and no ground under a tree in the ground; everything is fixed', () => {
    const surfaces = surroundingSurfaces(sampleFile('old-fig-in-ground'));
    expect(surfaces.map((s) => s.shape)).toEqual(['cloud', 'mesh']);
    expect(surfaces.every((s) => s.owner === 0)).toBe(true);
    expect(stanceOf(sampleFile('old-fig-in-ground')).foot).toEqual([0.35, 0, 0.6]);
  });
});
