import { describe, expect, it } from 'vitest';
import type { Blade, Cloud, Receiver, Stem, Surface } from '../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';
import { meetsBlade, meetsStem, meetsTriangle, pathInCloudM } from '../../../src/light/trace/meet.ts';
import { parallelBeamTracer } from '../../../src/light/trace/parallelBeam.ts';

const optics = { transmittance: 0.05, reflectance: 0.1 };
const upright: Vec3 = [0, 1, 0];
const stem: Stem = {
  shape: 'stem',
  owner: 3,
  optics,
  from: [0, 1, 0],
  to: [4, 1, 0],
  fromRadiusM: 0.5,
  toRadiusM: 0.1,
};
const blade: Blade = {
  shape: 'blade',
  owner: 2,
  optics,
  origin: [0.2, 0.9, 0.1],
  along: [0.3, 0, 0],
  across: [0, 0, 0.2],
  outline: [
    [0, -0.5],
    [1, 0],
    [0, 0.5],
  ],
};
const cloud: Cloud = {
  shape: 'cloud',
  owner: 0,
  optics,
  centre: [0, 5, 0],
  halfSizeM: [1, 2, 3],
  extinctionPerM: 0.4,
};

describe('a triangle', () => {
  const corners: [Vec3, Vec3, Vec3] = [
    [0, 1, 0],
    [2, 1, 0],
    [0, 1, 3],
  ];
  it('is met from either side, ahead only, and by no ray along it', () => {
    expect(meetsTriangle(...corners, [0.5, 0, 1], upright)).toBe(true);
    expect(meetsTriangle(...corners, [0.5, 3, 1], [0, -1, 0])).toBe(true);
    expect(meetsTriangle(...corners, [0.5, 3, 1], upright)).toBe(false);
    expect(meetsTriangle(...corners, [1.5, 0, 1.5], upright)).toBe(false);
    expect(meetsTriangle(...corners, [-1, 1, 0.5], [1, 0, 0])).toBe(false);
  });
});

describe('a blade', () => {
  it('is met inside its outline as its frame scales and turns it', () => {
    expect(meetsBlade(blade, [0.29, 0, 0.1], upright)).toBe(true);
    expect(meetsBlade(blade, [0.29, 0, 0.18], upright)).toBe(false);
    expect(meetsBlade(blade, [0.21, 0, 0.18], upright)).toBe(true);
    expect(meetsBlade(blade, [0.29, 2, 0.1], upright)).toBe(false);
    expect(meetsBlade(blade, [-5, 0.9, 0.1], [1, 0, 0])).toBe(false);
  });
});

describe('a stem', () => {
  it('reaches past its ends by the balls there', () => {
    expect(meetsStem(stem, [-0.49, 0, 0], upright)).toBe(true);
    expect(meetsStem(stem, [-0.51, 0, 0], upright)).toBe(false);
    expect(meetsStem(stem, [4.09, 0, 0], upright)).toBe(true);
    expect(meetsStem(stem, [4.11, 0, 0], upright)).toBe(false);
  });

  it('tapers along the common tangents of its balls', () => {
    // Half-width at x of the tangent line: (0.5 - 0.1 x) / cos(asin(0.1)).
    const halfWidth = (0.5 - 0.1 * 2.3) / Math.sqrt(1 - 0.01);
    expect(meetsStem(stem, [2.3, 0, halfWidth - 1e-6], upright)).toBe(true);
    expect(meetsStem(stem, [2.3, 0, halfWidth + 1e-6], upright)).toBe(false);
  });

  it('shades a receiver inside it, and none that lies beyond it', () => {
    expect(meetsStem(stem, [1, 1.2, 0], upright)).toBe(true);
    expect(meetsStem(stem, [1, 1.5, 0], upright)).toBe(false);
  });

  it('seen end-on is its larger ball', () => {
    const post: Stem = { ...stem, from: [0, 1, 0], to: [0, 1.3, 0] };
    expect(meetsStem(post, [0.45, 0, 0], upright)).toBe(true);
    expect(meetsStem(post, [0.55, 0, 0], upright)).toBe(false);
  });
});

describe('a cloud', () => {
  it('is crossed by its chord ahead of the receiver', () => {
    expect(pathInCloudM(cloud, [0, 0, 0], upright)).toBeCloseTo(4, 12);
    expect(pathInCloudM(cloud, [0, 6, 0], upright)).toBeCloseTo(1, 12);
    expect(pathInCloudM(cloud, [0.6, 0, 0], upright)).toBeCloseTo(4 * 0.8, 12);
    expect(pathInCloudM(cloud, [0, 8, 0], upright)).toBe(0);
    expect(pathInCloudM(cloud, [1.1, 0, 0], upright)).toBe(0);
  });
  it('has its path inside a box from face to face, turned clockwise with it', () => {
    const box: Cloud = { ...cloud, form: 'box' };
    expect(pathInCloudM(box, [0.9, 0, 2.9], upright)).toBe(4);
    expect(pathInCloudM(box, [0.9, 6, 2.9], upright)).toBe(1);
    expect(pathInCloudM(box, [1.1, 0, 0], upright)).toBe(0);
    expect(pathInCloudM(box, [0, 5, 0], [1, 0, 0])).toBe(1);
    expect(pathInCloudM(box, [-4, 5, 0], [0.6, 0, 0.8])).toBe(0);
    expect(pathInCloudM(box, [-4, 5, -4], [0.6, 0, 0.8])).toBeCloseTo(2 / 0.6, 12);
    // Its long side ran north-south; turned by 30 degrees its north end points 30 degrees east of north.
    const turned: Cloud = { ...box, turnedDeg: 30 };
    expect(pathInCloudM(turned, [0, 5, 0], [0.5, 0, -Math.sqrt(0.75)])).toBeCloseTo(3, 12);
    expect(pathInCloudM(turned, [0, 5, 0], [-0.5, 0, -Math.sqrt(0.75)])).toBeCloseTo(1 / Math.sqrt(0.75), 12);
  });
});

const one = (point: Vec3, onSurface = -1): Receiver => ({ point, normal: upright, sides: 'one', onSurface });

describe.each([
  ['brute force', bruteForceTracer],
  ['parallel beam', parallelBeamTracer],
] as const)('the %s tracer', (_, makeTracer) => {
  const passed = (surfaces: Surface[], receiver: Receiver, toSky: Vec3): [number, number][] => {
    const found: [number, number][] = [];
    makeTracer(surfaces, [receiver])(toSky, (_receiver, surface, share) => found.push([surface, share]));
    return found.sort((p, q) => p[0] - q[0]);
  };

  it('reports every surface on the way, each with what it lets through', () => {
    const got = passed([cloud, { ...stem, from: [0, 2, 0] }, blade], one([0.25, 0, 0.1]), upright);
    expect(got.map(([surface]) => surface)).toEqual([0, 1, 2]);
    expect(got[0]?.[1]).toBeCloseTo(Math.exp(-0.4 * 4 * Math.sqrt(1 - 0.0625 - 0.01 / 9)), 12);
    expect(got[1]?.[1]).toBe(0.05);
  });

  it('never shades a receiver by the surface it lies on, and does by its neighbour', () => {
    const second = { ...blade, origin: [0.2, 0.95, 0.1] as Vec3 };
    expect(passed([blade, second], { ...one([0.25, 0.9, 0.1], 0), sides: 'both' }, upright)).toEqual([
      [1, 0.05],
    ]);
  });

  it('sends no ray behind a one-sided receiver', () => {
    expect(passed([cloud], one([0, 9, 0]), [0, -1, 0])).toEqual([]);
    expect(passed([cloud], { ...one([0, 9, 0]), sides: 'both' }, [0, -1, 0])).toHaveLength(1);
  });

  it('casts the shade of an upright post as long as its height over the tangent of the elevation', () => {
    const post: Stem = { ...stem, from: [0, 0, 0], to: [0, 2, 0], fromRadiusM: 0.01, toRadiusM: 0.01 };
    const toSun = direction(200, 35);
    const away = (lengthM: number): Receiver =>
      one([-lengthM * Math.sin((200 * Math.PI) / 180), 0, lengthM * Math.cos((200 * Math.PI) / 180)]);
    const lengthM = 2 / Math.tan((35 * Math.PI) / 180);
    expect(passed([post], away(lengthM - 0.001), toSun)).toHaveLength(1);
    expect(passed([post], away(lengthM + 0.02), toSun)).toHaveLength(0);
  });

  it('lets no ray slip between the two triangles of a square', () => {
    const square: Surface = {
      shape: 'mesh',
      owner: 0,
      optics,
      triangles: [-1, 1, -1, 1, 1, -1, 1, 1, 1, -1, 1, -1, 1, 1, 1, -1, 1, 1],
    };
    for (let i = 1; i < 40; i++) {
      const along = -1 + i / 20.5;
      expect(passed([square], one([along, 0, along]), upright).length).toBeGreaterThan(0);
    }
  });

  it('takes triangles without area as shading nothing, and a stem without length as a ball', () => {
    const flat: Surface = { shape: 'mesh', owner: 0, optics, triangles: [0, 1, 0, 1, 1, 1, 2, 1, 2] };
    expect(passed([flat], one([0.5, 0, 0.5]), upright)).toEqual([]);
    const ball: Stem = { ...stem, from: [0, 1, 0], to: [0, 1, 0] };
    expect(passed([ball], one([0.49, 0, 0]), upright)).toHaveLength(1);
    expect(passed([ball], one([0.51, 0, 0]), upright)).toHaveLength(0);
  });

  it('refuses scenes that are not sound', () => {
    const bad = (surface: Partial<Blade>): Surface => ({ ...blade, ...surface });
    const message =
      (surface: Surface, receiver = one([0, 0, 0])) =>
      () =>
        makeTracer([surface], [receiver]);
    expect(message(bad({ owner: -1 }))).toThrow('owner of surface 0 must be a whole number from 0, got -1');
    expect(message(bad({ origin: [0, Number.NaN, 0] }))).toThrow(
      'origin of surface 0 must be finite, got NaN',
    );
    expect(message(bad({ optics: { transmittance: 0.7, reflectance: 0.4 } }))).toThrow('1 at most together');
    expect(message(bad({ outline: [[0, 0]] }))).toThrow('needs three points');
    const line = [0, 1, 2].map((u) => [u, 0.5] as const);
    expect(message(bad({ outline: line }))).toThrow('outline of surface 0 must have an area, got 2 by 0');
    expect(message(bad({ across: [-0.6, 0, 0] }))).toThrow('along and across of surface 0 must span a plane');
    expect(message({ ...cloud, extinctionPerM: Number.NaN })).toThrow('extinctionPerM of surface 0');
    expect(message({ ...cloud, halfSizeM: [1, 0, 1] })).toThrow('halfSizeM of surface 0');
    expect(message({ ...cloud, turnedDeg: Number.NaN })).toThrow('turn of surface 0');
    expect(message({ ...stem, toRadiusM: -1 })).toThrow('toRadiusM of surface 0 must be 0 or more, got -1');
    expect(message({ shape: 'mesh', owner: 0, optics, triangles: [1, 2, 3] })).toThrow(
      'nine numbers a triangle',
    );
    expect(message(blade, { ...one([0, 0, 0]), normal: [0, 2, 0] })).toThrow(
      'normal of receiver 0 must be a unit',
    );
    expect(message(blade, one([0, 0, 0], 1))).toThrow(
      'receiver 0 must lie on a surface of the scene or on none',
    );
    expect(() => makeTracer([blade], [one([0, 0, 0])])([0, 0.5, 0], () => {})).toThrow(
      'toSky must be a unit',
    );
  });
});
