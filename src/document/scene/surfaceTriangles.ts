/** Every surface that light can meet, as triangles. */
import type { Outline } from '../../geometry/outline.ts';
import type { Blade, Cloud, Mesh, Stem, Surface } from '../../geometry/surface.ts';
import { add, distance, normalize, scale, sub, up, type Vec3 } from '../../geometry/vec.ts';
import { turnAboutUpright } from '../../geometry/world.ts';
import { earClip } from './earClip.ts';
import { type Ring, revolve, sameWidth, type Triangle } from './revolve.ts';

/** Sides of round wood, and degrees from ring to ring on its round ends: see `stemTriangles` for what they cost. */
const stemSides = 12;
const capStepDeg = 45;
const cloudSides = 48;
const cloudRings = 24;

const rad = Math.PI / 180;

/** Rings of a ball about `atM` from one latitude to another, both included; towards the axis' tip is 90. */
function ballRings(atM: number, radiusM: number, fromDeg: number, toDeg: number, steps: number): Ring[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const latitudeDeg = fromDeg + ((toDeg - fromDeg) * i) / steps;
    const isPole = Math.abs(latitudeDeg) === 90;
    return {
      atM: atM + radiusM * Math.sin(latitudeDeg * rad),
      radiusM: isPole ? 0 : radiusM * Math.cos(latitudeDeg * rad),
    };
  });
}

/**
 * Tapered round wood as a closed solid: the cone that touches both end balls, and what of the balls stands out of it. Its
 * sides are chords: they lie up to 2.3 % of the radius inside and their edges 1.2 % outside of the round wood, and the mean
 * width is that of the round wood; the round ends lie up to 8 % of the radius inside.
 */
function stemTriangles({ from, to, fromRadiusM, toRadiusM }: Stem): Triangle[] {
  const lengthM = distance(from, to);
  const [larger, middle] = fromRadiusM >= toRadiusM ? [fromRadiusM, from] : [toRadiusM, to];
  if (larger === 0) return [];
  if (lengthM <= Math.abs(fromRadiusM - toRadiusM)) {
    return revolve(middle, up, ballRings(0, larger, -90, 90, 180 / capStepDeg), stemSides);
  }
  const touchDeg = Math.asin((fromRadiusM - toRadiusM) / lengthM) / rad;
  const steps = (spanDeg: number): number => Math.max(1, Math.ceil(spanDeg / capStepDeg - 1e-9));
  const rings = [
    ...ballRings(0, fromRadiusM, -90, touchDeg, steps(90 + touchDeg)),
    ...ballRings(lengthM, toRadiusM, touchDeg, 90, steps(90 - touchDeg)),
  ];
  return revolve(from, normalize(sub(to, from)), rings, stemSides);
}

/** The cube from -1 to 1, its triangles anticlockwise seen from outside. */
const cube: readonly Triangle[] = ([0, 1, 2] as const).flatMap((axis) =>
  [-1, 1].flatMap((side): Triangle[] => {
    const at = (u: number, v: number): Vec3 => {
      const [a, b] = [u, v * side];
      return axis === 0 ? [side, a, b] : axis === 1 ? [b, side, a] : [a, b, side];
    };
    const [a, b, c, d] = [at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)];
    return [
      [a, b, c],
      [a, c, d],
    ];
  }),
);

/** A crown, within 0.3 % of its half sizes, or exactly a hedge's or fence's box. */
function cloudTriangles({ form, centre, halfSizeM, turnedDeg = 0 }: Cloud): Triangle[] {
  const rings = ballRings(0, sameWidth(2 * cloudRings), -90, 90, cloudRings);
  const place = (p: Vec3): Vec3 => {
    const sized: Vec3 = [p[0] * halfSizeM[0], p[1] * halfSizeM[1], p[2] * halfSizeM[2]];
    return add(centre, turnAboutUpright(sized, turnedDeg));
  };
  const unit = form === 'box' ? cube : revolve([0, 0, 0], up, rings, cloudSides);
  return unit.map(([a, b, c]) => [place(a), place(b), place(c)]);
}

function meshTriangles({ triangles }: Mesh): Triangle[] {
  const corner = (at: number): Vec3 => [
    triangles[at] as number,
    triangles[at + 1] as number,
    triangles[at + 2] as number,
  ];
  return Array.from({ length: triangles.length / 9 }, (_, i) => [
    corner(9 * i),
    corner(9 * i + 3),
    corner(9 * i + 6),
  ]);
}

/** Exactly the flat outline. */
function bladeTriangles(blade: Blade, cut: readonly [number, number, number][]): Triangle[] {
  const corners = blade.outline.map(([u, v]) =>
    add(blade.origin, add(scale(blade.along, u), scale(blade.across, v))),
  );
  return cut.map(([a, b, c]) => [corners[a] as Vec3, corners[b] as Vec3, corners[c] as Vec3]);
}

/** The triangles of each surface, in the order of the surfaces. A stem without thickness has none. */
export function surfaceTriangles(surfaces: readonly Surface[]): Triangle[][] {
  const cuts = new Map<Outline, [number, number, number][]>();
  const cutOf = (outline: Outline): [number, number, number][] => {
    const cut = cuts.get(outline) ?? earClip(outline);
    cuts.set(outline, cut);
    return cut;
  };
  return surfaces.map((surface) => {
    switch (surface.shape) {
      case 'mesh':
        return meshTriangles(surface);
      case 'blade':
        return bladeTriangles(surface, cutOf(surface.outline));
      case 'stem':
        return stemTriangles(surface);
      case 'cloud':
        return cloudTriangles(surface);
    }
  });
}
