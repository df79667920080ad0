/**
 * Wood for the sample trees: paths that are a little crooked, as wood is, and a tree under construction that
 * keeps new wood clear of what stands. All chance comes from the seed and the names.
 */

import type { TreeFile } from '../../src/document/treeFile.ts';
import { closestApproach } from '../../src/geometry/distance.ts';
import { type Path, pathLengthM, pathUpTo, pointAt } from '../../src/geometry/path.ts';
import { hashText, random01, randomNormal } from '../../src/geometry/random.ts';
import type { Axis, AxisKind, Bud } from '../../src/geometry/tree.ts';
import { add, origin, scale, type Vec3 } from '../../src/geometry/vec.ts';
import { direction } from '../../src/geometry/world.ts';

/** An axis as it goes into a file: nothing is left to defaults. */
export type Wood = TreeFile['axes'][number];

export interface Bend {
  readonly bearingDeg: number;
  /** At the base and at the tip: 0 upright, 90 level. */
  readonly uprightDeg: number;
  readonly tipUprightDeg: number;
  readonly lengthM: number;
  readonly stretches: number;
  /** How far the bearing strays from stretch to stretch, degrees (one standard deviation). */
  readonly strayDeg: number;
}

const tenthMm = (v: Vec3): Vec3 => v.map((x) => Math.round(x * 1e4) / 1e4 + 0) as unknown as Vec3;

/** A path from the origin that bends evenly from its first to its last direction and strays a little. */
export function crookedPath(bend: Bend, seed: number, ...words: number[]): Vec3[] {
  const path: Vec3[] = [origin];
  const stretchM = bend.lengthM / bend.stretches;
  for (let i = 0; i < bend.stretches; i++) {
    const t = bend.stretches === 1 ? 0 : i / (bend.stretches - 1);
    const stray = i === 0 ? 0 : bend.strayDeg;
    const upright = bend.uprightDeg + (bend.tipUprightDeg - bend.uprightDeg) * t;
    const bearing = bend.bearingDeg + stray * randomNormal(seed, ...words, i, 1);
    const lean = upright + 0.6 * stray * randomNormal(seed, ...words, i, 2);
    path.push(add(path[i] as Vec3, scale(direction(bearing, 90 - lean), stretchM)));
  }
  return path.map(tenthMm);
}

export interface NewWood {
  readonly id: string;
  readonly name: string;
  readonly kind: AxisKind;
  readonly parentId: string | null;
  readonly atM: number;
  readonly path: Path;
  readonly baseDiameterM: number;
  readonly tipDiameterM: number;
  readonly grownIn: number;
  readonly condition?: Axis['condition'];
  readonly buds?: Bud[];
  readonly foliage?: Axis['foliage'];
}

const axisOf = (wood: NewWood): Wood => ({
  condition: 'live',
  foliage: null,
  buds: [],
  pin: null,
  ...wood,
  path: wood.path.map(([x, y, z]) => [x, y, z]),
});

interface Standing {
  readonly wood: Wood;
  readonly path: Path;
  readonly lengthM: number;
}

/** The tree while it is built, in the world with its foot at the origin. */
export class TreeInHand {
  readonly #standing = new Map<string, Standing>();

  get axes(): Wood[] {
    return [...this.#standing.values()].map(({ wood }) => wood);
  }

  standing(id: string): Standing {
    const found = this.#standing.get(id);
    if (!found) throw new Error(`TreeInHand: no wood is called ${id}`);
    return found;
  }

  lengthM(id: string): number {
    return this.standing(id).lengthM;
  }

  #place(wood: NewWood): Standing {
    const parent = wood.parentId === null ? null : this.standing(wood.parentId);
    const base = parent === null ? origin : pointAt(parent.path, wood.atM);
    const path = wood.path.map((offset) => add(base, offset));
    return { wood: axisOf(wood), path, lengthM: pathLengthM(path) };
  }

  add(wood: NewWood): this {
    this.#standing.set(wood.id, this.#place(wood));
    return this;
  }

  /**
   * Free air between new wood and all that stands, metres. Near the fork, where all is one knot, nothing counts:
   * 7 cm, and on its own parent as much more as that is thick.
   */
  clearanceM(wood: NewWood): number {
    const placed = this.#place(wood);
    const outer = withoutBase(placed.path, 0.07);
    let least = Number.POSITIVE_INFINITY;
    for (const other of this.#standing.values()) {
      const isParent = other.wood.id === wood.parentId;
      const path = isParent ? withoutBase(placed.path, 0.07 + 1.2 * other.wood.baseDiameterM) : outer;
      const thick = (wood.baseDiameterM + other.wood.baseDiameterM) / 2;
      least = Math.min(least, closestApproach(path, other.path).distanceM - thick);
    }
    return least;
  }

  /** Adds the first of the offered woods that stands clear by `gapM`. Throws when none does. */
  addClear(gapM: number, tries: number, offer: (attempt: number) => NewWood): this {
    let best = Number.NEGATIVE_INFINITY;
    for (let attempt = 0; attempt < tries; attempt++) {
      const wood = offer(attempt);
      const clear = this.clearanceM(wood);
      if (clear >= gapM) return this.add(wood);
      best = Math.max(best, clear);
    }
    throw new Error(`TreeInHand: ${offer(0).id} finds no room, best gap ${best.toFixed(4)} m`);
  }
}

/** The path without its first metres. */
function withoutBase(path: Path, cutM: number): Path {
  const whole = pathLengthM(path);
  if (whole <= cutM) return path.slice(-2);
  const rest = pathUpTo([...path].reverse(), whole - cutM);
  return [...rest].reverse();
}

/** Buds in a spiral from `fromM` to the tip. */
export function spiralBuds(
  axisId: string,
  atM: readonly number[],
  firstAroundDeg: number,
  divergenceDeg: number,
  seed: number,
): Bud[] {
  return atM.map((at, i) => ({
    id: `${axisId}-b${i + 1}`,
    atM: Math.round(at * 1e4) / 1e4,
    aroundDeg:
      Math.round(
        10 *
          ((firstAroundDeg + i * divergenceDeg + 6 * randomNormal(seed, hashText(axisId), i) + 3600) % 360),
      ) / 10,
    pin: null,
  }));
}

/** A figure spread evenly from `from` to `to` by chance. */
export const between = (from: number, to: number, seed: number, ...words: number[]): number =>
  from + (to - from) * random01(seed, ...words);

export const mm = (m: number): number => Math.round(m * 1e4) / 1e4;
