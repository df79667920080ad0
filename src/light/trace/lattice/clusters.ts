/** Things that lie together, with a box round each lot, so that most can be passed over where few rays are followed. */
import type { Vec3 } from '../../../geometry/vec.ts';
import type { Lattice } from './lattice.ts';
import { along, type Plane, planeOf } from './plane.ts';
import { bladeStride, type LatticeScene, stemStride, triangleStride } from './scene.ts';
import type { Followed, Ranges } from './sweep.ts';

export interface Clusters {
  /** Things of cluster c are first[c] to first[c + 1] (excluded): neighbours of one shape and one owner. */
  readonly first: Int32Array;
  /** Middle and half size of the box round cluster c, x, y and z each, metres, from entry 3 c on. */
  readonly middle: Float64Array;
  readonly half: Float64Array;
}

/** Our choice: a shoot's leaves fit in one. */
const mostThings = 16;
/** In spacings: far above the rounding of where things lie on the plane. */
const margin = 1e-6;

/** A box that grows. */
class Growing {
  readonly low = new Float64Array(3);
  readonly high = new Float64Array(3);

  constructor() {
    this.clear();
  }

  clear(): void {
    this.low.fill(Infinity);
    this.high.fill(-Infinity);
  }

  reach(k: number, low: number, high: number): void {
    this.low[k] = Math.min(this.low[k] as number, low);
    this.high[k] = Math.max(this.high[k] as number, high);
  }
}

function addBlade({ blade }: LatticeScene, n: number, box: Growing): void {
  for (let k = 0, at = n * bladeStride; k < 3; k++, at++) {
    const [corner, i, j] = [blade[at] as number, blade[at + 3] as number, blade[at + 6] as number];
    box.reach(k, corner + Math.min(0, i) + Math.min(0, j), corner + Math.max(0, i) + Math.max(0, j));
  }
}

function addStem({ stem }: LatticeScene, n: number, box: Growing): void {
  const at = n * stemStride;
  const [r0, r1] = [stem[at + 6] as number, stem[at + 7] as number];
  for (let k = 0; k < 3; k++) {
    const from = stem[at + k] as number;
    const to = from + (stem[at + 3 + k] as number);
    box.reach(k, Math.min(from - r0, to - r1), Math.max(from + r0, to + r1));
  }
}

function addTriangle({ triangle }: LatticeScene, n: number, box: Growing): void {
  const at = n * triangleStride;
  for (let k = 0; k < 9; k++) {
    const place = triangle[at + k] as number;
    box.reach(k % 3, place, place);
  }
}

function addThing(scene: LatticeScene, thing: number, box: Growing): void {
  const { bladeCount, stemCount } = scene;
  if (thing < bladeCount) addBlade(scene, thing, box);
  else if (thing < bladeCount + stemCount) addStem(scene, thing - bladeCount, box);
  else addTriangle(scene, thing - bladeCount - stemCount, box);
}

/** Where clusters begin, and the number of things. */
function boundaries({ bladeCount, stemCount, kind, kindOwner }: LatticeScene): Int32Array {
  const first: number[] = [];
  let [start, owner] = [0, -1];
  kind.forEach((k, thing) => {
    const own = kindOwner[k] as number;
    const isNewShape = thing === bladeCount || thing === bladeCount + stemCount;
    if (thing > 0 && own === owner && !isNewShape && thing - start < mostThings) return;
    [start, owner] = [thing, own];
    first.push(thing);
  });
  return Int32Array.from([...first, kind.length]);
}

export function clustersOf(scene: LatticeScene): Clusters {
  const first = boundaries(scene);
  const count = first.length - 1;
  const [middle, half, box] = [new Float64Array(3 * count), new Float64Array(3 * count), new Growing()];
  for (let c = 0; c < count; c++) {
    box.clear();
    for (let n = first[c] as number; n < (first[c + 1] as number); n++) addThing(scene, n, box);
    for (let k = 0; k < 3; k++) {
      const [low, high] = [box.low[k] as number, box.high[k] as number];
      middle[3 * c + k] = (low + high) / 2;
      half[3 * c + k] = (high - low) / 2;
    }
  }
  return { first, middle, half };
}

/** How far the box that begins at an entry reaches along an axis to either side. */
const reach = (half: Float64Array, at: number, axis: Vec3): number =>
  (half[at] as number) * Math.abs(axis[0]) +
  (half[at + 1] as number) * Math.abs(axis[1]) +
  (half[at + 2] as number) * Math.abs(axis[2]);

/** Puts into `ranges` the things of every cluster that may meet rays that are followed. */
export function findNear(clusters: Clusters, lattice: Lattice, followed: Followed, ranges: Ranges): void {
  const { x, y, x0, y0 }: Plane = planeOf(lattice);
  const { first, middle, half } = clusters;
  ranges.count = 0;
  for (let c = 0, at = 0; c < first.length - 1; c++, at += 3) {
    const middleY = along(middle, at, y) - y0;
    const halfY = reach(half, at, y) + margin;
    const [low, high] = [Math.ceil(middleY - halfY), Math.floor(middleY + halfY)];
    if (high < followed.low || low >= followed.low + followed.rows) continue;
    const middleX = along(middle, at, x) - x0;
    const halfX = reach(half, at, x) + margin;
    const [left, right] = [Math.ceil(middleX - halfX), Math.floor(middleX + halfX)];
    if (followed.meets(left, right, low, high)) ranges.add(first[c] as number, first[c + 1] as number);
  }
}
