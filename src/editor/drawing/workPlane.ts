/** The plane that a stroke lies in: through the wood it starts from, square to the way the picture looks. */
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf } from '../../document/views.ts';
import { closestApproach } from '../../geometry/distance.ts';
import { pointAt } from '../../geometry/path.ts';
import { placeTree } from '../../geometry/tree.ts';
import { add, distance, dot, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { bearingDeg, wind } from '../../geometry/world.ts';
import { axisOf } from '../edit.ts';
import { pointOnPlane } from '../pull/sight.ts';
import type { Look } from './look.ts';

export interface WorkPlane {
  /** A point of the world. */
  readonly through: Vec3;
  /** Unit vector to the eye. */
  readonly facing: Vec3;
  /** As "upright plane through East limb, seen from the south". */
  readonly words: string;
  /** Nothing is drawn outside this ball. */
  readonly room: Ball;
}

interface Ball {
  readonly centre: Vec3;
  readonly radiusM: number;
}

export interface Start {
  readonly parentId: string;
  /** Along the parent. */
  readonly atM: number;
  readonly plane: WorkPlane;
}

/** A stroke reaches so far, as a multiple of the radius of all wood; a tree that has hardly begun is given a metre. Our choice. */
const roomTimes = 2;
const leastRoomM = 1;
/** A line of sight is followed so far, metres: past any tree. */
const sightM = 200;

/** Twice the ball round all wood. */
export function roomOf(file: TreeFile): Ball {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  const points = [...placeTree({ axes: file.axes }, stanceOf(file)).values()].flatMap(({ path }) => path);
  for (const point of points) {
    for (let k = 0; k < 3; k++) {
      low[k] = Math.min(low[k] as number, point[k] as number);
      high[k] = Math.max(high[k] as number, point[k] as number);
    }
  }
  const centre = scale(add(low, high), 0.5);
  const radiusM = Math.max(...points.map((point) => distance(centre, point)));
  return { centre, radiusM: Math.max(leastRoomM, roomTimes * radiusM) };
}

/** The start of a stroke on a branch: the point of its centre line that is seen nearest to the pixel. */
export function startOn(file: TreeFile, parentId: string, look: Look, x: number, y: number): Start {
  const placed = placeTree({ axes: file.axes }, stanceOf(file)).get(parentId);
  if (placed === undefined) throw new Error(`startOn: no branch with id ${parentId}`);
  const { from, way } = look.sightAt(x, y);
  const atM = closestApproach(placed.path, [from, add(from, scale(way, sightM))]).alongFirstM;
  return { parentId, atM, plane: planeThrough(file, parentId, pointAt(placed.path, atM), look.facing) };
}

export function planeThrough(file: TreeFile, id: string, through: Vec3, facing: Vec3): WorkPlane {
  return { through, facing, words: planeWords(axisOf(file, id).name, facing), room: roomOf(file) };
}

/** A plane that leans by less than this counts as upright or level, as a coordinate of its unit vector. */
const straight = 1e-3;

export function planeWords(name: string, facing: Vec3): string {
  if (Math.abs(facing[1]) > 1 - straight * straight) return `level plane through ${name}, seen from above`;
  const from = `seen from the ${wind(bearingDeg(facing))}`;
  if (Math.abs(facing[1]) < straight) return `upright plane through ${name}, ${from}`;
  return `leaning plane through ${name}, ${from} and ${facing[1] > 0 ? 'above' : 'below'}`;
}

/** The point of the plane under a pixel, kept within the room; null where the plane is seen too much from its edge. */
export function onPlane({ through, facing, room }: WorkPlane, look: Look, x: number, y: number): Vec3 | null {
  const met = pointOnPlane(look.sightAt(x, y), through, facing);
  return met === null ? null : keptWithin(room, through, met);
}

/** A point outside the ball brought back to it on the straight way to a point inside. */
export function keptWithin({ centre, radiusM }: Ball, inside: Vec3, point: Vec3): Vec3 {
  if (distance(point, centre) <= radiusM) return point;
  const [way, from] = [sub(point, inside), sub(inside, centre)];
  const [a, b, c] = [dot(way, way), dot(way, from), dot(from, from) - radiusM * radiusM];
  const t = (-b + Math.sqrt(Math.max(0, b * b - a * c))) / a;
  return add(inside, scale(way, Math.max(0, Math.min(1, t))));
}
