/** A tree while it is built: new wood is kept clear of what stands. */
import type { TreeFile } from '../../document/treeFile.ts';
import { closestApproach } from '../../geometry/distance.ts';
import { type Path, pathLengthM, pathUpTo, pointAt } from '../../geometry/path.ts';
import type { Axis, AxisKind } from '../../geometry/tree.ts';
import { add, distance, lerp, origin, type Vec3 } from '../../geometry/vec.ts';

/** An axis as it goes into a file: nothing is left to defaults. */
export type Wood = TreeFile['axes'][number];

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
  readonly buds?: Wood['buds'];
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
  /** In the world, with the foot of the trunk at the origin. */
  readonly path: Path;
  readonly lengthM: number;
  /** No point of the path lies further than `reachM` from `middle`. */
  readonly middle: Vec3;
  readonly reachM: number;
}

export class TreeInHand {
  readonly #standing = new Map<string, Standing>();

  /** With all that stands on a tree already, parents first. */
  static of(axes: readonly Wood[]): TreeInHand {
    const tree = new TreeInHand();
    for (const axis of axes) tree.add(axis);
    return tree;
  }

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
    const middle = lerp(path[0] as Vec3, path[path.length - 1] as Vec3, 0.5);
    const reachM = Math.max(...path.map((point) => distance(point, middle)));
    return { wood: axisOf(wood), path, lengthM: pathLengthM(path), middle, reachM };
  }

  add(wood: NewWood): this {
    this.#standing.set(wood.id, this.#place(wood));
    return this;
  }

  /**
   * Free air between new wood and all that stands, metres. Near the fork, where all is one knot, nothing counts:
   * 7 cm, and on its own parent as much more as that is thick. Found to be `enoughM` or less, it is not looked at further.
   */
  #airM(wood: NewWood, enoughM: number): number {
    const placed = this.#place(wood);
    const outer = withoutBase(placed.path, 0.07);
    let least = Number.POSITIVE_INFINITY;
    for (const other of this.#standing.values()) {
      const isParent = other.wood.id === wood.parentId;
      const thick = (wood.baseDiameterM + other.wood.baseDiameterM) / 2;
      const apart = distance(placed.middle, other.middle) - placed.reachM - other.reachM;
      if (apart - thick > least) continue;
      const path = isParent ? withoutBase(placed.path, 0.07 + 1.2 * other.wood.baseDiameterM) : outer;
      least = Math.min(least, closestApproach(path, other.path).distanceM - thick);
      if (least <= enoughM) break;
    }
    return least;
  }

  /** The first of the offered woods that stands clear by `gapM`; otherwise the one with the most air. */
  #clearest(gapM: number, tries: number, offer: (attempt: number) => NewWood): [wood: NewWood, airM: number] {
    let best: [NewWood, number] | null = null;
    for (let attempt = 0; attempt < tries; attempt++) {
      const wood = offer(attempt);
      const airM = this.#airM(wood, best?.[1] ?? Number.NEGATIVE_INFINITY);
      if (best === null || airM > best[1]) best = [wood, airM];
      if (airM >= gapM) return [wood, airM];
    }
    if (best === null) throw new Error(`TreeInHand: at least one try is needed, got ${tries}`);
    return best;
  }

  /** Adds the first of the offered woods that stands clear by `gapM`. Throws when none does. */
  addClear(gapM: number, tries: number, offer: (attempt: number) => NewWood): this {
    const [wood, airM] = this.#clearest(gapM, tries, offer);
    if (airM < gapM) throw new Error(`TreeInHand: ${wood.id} finds no room, best gap ${airM.toFixed(4)} m`);
    return this.add(wood);
  }

  /** Adds the first of the offered woods that stands clear by `gapM`, or the one with the most air round it. */
  addClearest(gapM: number, tries: number, offer: (attempt: number) => NewWood): this {
    return this.add(this.#clearest(gapM, tries, offer)[0]);
  }
}

/** The path without its first metres. */
function withoutBase(path: Path, cutM: number): Path {
  const whole = pathLengthM(path);
  if (whole <= cutM) return path.slice(-2);
  const rest = pathUpTo([...path].reverse(), whole - cutM);
  return [...rest].reverse();
}
