/** Pot, walls, fences, hedges, boxes and neighbouring crowns of a tree file as surfaces that light can meet, in the world. */
import { type Cloud, fixedOwner, type Mesh, type Optics, opaque, type Surface } from '../geometry/surface.ts';
import type { Vec3 } from '../geometry/vec.ts';
import { rad, turnAboutUpright } from '../geometry/world.ts';
import { type Footprint, footprintOf } from './footprint.ts';
import type { Surrounding, TreeFile } from './treeFile.ts';

/** Corners of the polygon that stands for the pot's circle; it is at most 0.3 % of the radius inside it. */
const potCorners = 40;
/** Our choice: the wall of a plastic or clay pot of this size. */
const potWallM = 0.012;
/** Mean projection of leaves turned every way alike (Campbell and Norman 1998, chapter 15: spherical distribution). */
const randomLeafProjection = 0.5;

/** Of a beam among leaves of such an area density (m2 a m3), per metre of its path. */
export const leavesExtinctionPerM = (leafAreaDensityM2M3: number): number =>
  randomLeafProjection * leafAreaDensityM2M3;

const mesh = (triangles: readonly Vec3[], optics: Optics): Mesh => ({
  shape: 'mesh',
  owner: fixedOwner,
  optics,
  triangles: Float64Array.from(triangles.flat()),
});

/** Two triangles; corners run anticlockwise seen from outside. */
const quad = (a: Vec3, b: Vec3, c: Vec3, d: Vec3): Vec3[] => [a, b, c, a, c, d];

/** An upright block with its foot on the ground. */
function block({ middle, halfM, turnedDeg }: Footprint, heightM: number): Vec3[] {
  const corner = (east: number, north: number, y: number): Vec3 => {
    const [x, , z] = turnAboutUpright([east * halfM[0], 0, -north * halfM[1]], turnedDeg);
    return [middle[0] + x, y, z - middle[1]];
  };
  const around = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const;
  const low = around.map(([e, n]) => corner(e, n, 0)) as [Vec3, Vec3, Vec3, Vec3];
  const high = around.map(([e, n]) => corner(e, n, heightM)) as [Vec3, Vec3, Vec3, Vec3];
  const sides = low.flatMap((a, i) => {
    const j = (i + 1) % 4;
    return quad(a, low[j] as Vec3, high[j] as Vec3, high[i] as Vec3);
  });
  const [a, b, c, d] = low;
  return [...sides, ...quad(...high), ...quad(d, c, b, a)];
}

type Kind<K extends Surrounding['kind']> = Extract<Surrounding, { kind: K }>;

function wallMesh(wall: Kind<'wall' | 'fence'>, reflectance: number): Mesh {
  return mesh(block(footprintOf(wall), wall.heightM), { transmittance: 0, reflectance });
}

/** The part of a cloud that fills a long thing from the ground up. */
function longCloud(long: Kind<'fence' | 'hedge'>, extinctionPerM: number): Cloud {
  const { middle, halfM, turnedDeg } = footprintOf(long);
  return {
    shape: 'cloud',
    form: 'box',
    owner: fixedOwner,
    optics: opaque,
    centre: [middle[0], long.heightM / 2, -middle[1]],
    halfSizeM: [halfM[0], long.heightM / 2, halfM[1]],
    turnedDeg,
    extinctionPerM,
  };
}

/**
 * Square on its open share passes, and askew that share to the power of the path through it over its thickness, 1 / cos for a long
 * fence: nothing end-on. Our choice, right for twigs and wires spread evenly in its depth; upright slats hide more of what comes from
 * the side and less of what comes from above. Without gaps it is a dark wall.
 */
function fenceSurface(fence: Kind<'fence'>): Surface {
  const { openFraction, thicknessM } = fence;
  return openFraction === 0 ? wallMesh(fence, 0) : longCloud(fence, -Math.log(openFraction) / thicknessM);
}

/** A gable roof on a block whose ridge runs along its first size, between the middles of the two other sides. */
function roof(box: Kind<'box'>, ridgeHeightM: number): Vec3[] {
  const [halfEastM, halfNorthM, eavesM] = [box.sizeM[0] / 2, box.sizeM[1] / 2, box.sizeM[2]];
  const at = (east: number, north: number, y: number): Vec3 => {
    const [x, , z] = turnAboutUpright([east * halfEastM, 0, -north * halfNorthM], box.turnedDeg);
    return [box.centre[0] + x, y, -box.centre[1] + z];
  };
  const [west, east] = [at(-1, 0, ridgeHeightM), at(1, 0, ridgeHeightM)];
  const [sw, se, ne, nw] = [at(-1, -1, eavesM), at(1, -1, eavesM), at(1, 1, eavesM), at(-1, 1, eavesM)];
  return [...quad(sw, se, east, west), ...quad(ne, nw, west, east), se, ne, east, nw, sw, west];
}

function boxMesh(box: Kind<'box'>): Mesh {
  const triangles = block(footprintOf(box), box.sizeM[2]);
  const above = box.ridgeHeightM === undefined ? [] : roof(box, box.ridgeHeightM);
  return mesh([...triangles, ...above], { transmittance: 0, reflectance: box.reflectance });
}

function crownCloud(crown: Kind<'crown'>): Cloud {
  const [halfEastM, halfNorthM, halfUpM] = crown.halfSizeM;
  return {
    shape: 'cloud',
    owner: fixedOwner,
    optics: opaque,
    centre: [crown.centre[0], crown.centreHeightM, -crown.centre[1]],
    halfSizeM: [halfEastM, halfUpM, halfNorthM],
    extinctionPerM: leavesExtinctionPerM(crown.leafAreaDensityM2M3),
  };
}

/** The band between two level circles about the upright through `foot`. */
function band(foot: Vec3, lowRadiusM: number, lowM: number, highRadiusM: number, highM: number): Vec3[] {
  const at = (i: number, r: number, y: number): Vec3 => {
    const a = rad((360 * i) / potCorners);
    return [foot[0] + r * Math.sin(a), y, foot[2] + r * Math.cos(a)];
  };
  return Array.from({ length: potCorners }, (_, i) =>
    quad(
      at(i, lowRadiusM, lowM),
      at(i + 1, lowRadiusM, lowM),
      at(i + 1, highRadiusM, highM),
      at(i, highRadiusM, highM),
    ),
  ).flat();
}

/** Outer wall, rim, inner wall down to the soil, and the soil. Its foot is open: it stands on the ground. */
function potMesh(pot: NonNullable<TreeFile['standing']['pot']>, foot: Vec3): Mesh {
  const [topM, baseM] = [pot.topDiameterM / 2, pot.baseDiameterM / 2];
  const innerTopM = topM - potWallM;
  const soilM = pot.heightM - pot.soilBelowRimM;
  const innerSoilM = baseM + ((topM - baseM) * soilM) / pot.heightM - potWallM;
  return mesh(
    [
      ...band(foot, baseM, 0, topM, pot.heightM),
      ...band(foot, topM, pot.heightM, innerTopM, pot.heightM),
      ...band(foot, innerTopM, pot.heightM, innerSoilM, soilM),
      ...band(foot, innerSoilM, soilM, 0, soilM),
    ],
    opaque,
  );
}

function surfaceOf(thing: Surrounding): Surface {
  switch (thing.kind) {
    case 'wall':
      return wallMesh(thing, thing.reflectance);
    case 'fence':
      return fenceSurface(thing);
    case 'hedge':
      return longCloud(thing, leavesExtinctionPerM(thing.leafAreaDensityM2M3));
    case 'box':
      return boxMesh(thing);
    case 'crown':
      return crownCloud(thing);
  }
}

/**
 * What stands for good around the tree, owner 0: the pot first if there is one, then the surroundings in the
 * order of the file. The open ground is not among them: rays below the level are cells of their own.
 */
export function surroundingSurfaces(file: TreeFile): readonly Surface[] {
  const { pot, at } = file.standing;
  const around = file.site.surroundings.map(surfaceOf);
  return pot === null ? around : [potMesh(pot, [at[0], 0, -at[1]]), ...around];
}
