/** The canopy: everything of the tree that light can meet, and the nodes where it is asked for. */
import type { Vec3 } from '../geometry/vec.ts';

/**
 * What can be cut, as one number each. Owner 0 is the surroundings. Every axis of the tree has an owner,
 * and so has every bud that was grown into a shoot (id of the bud).
 */
export interface Owner {
  /** Id of the axis or of the bud. */
  readonly id: string;
  /** An end is what a cut would take of an axis that it shortens; see `cutEnds.ts`. */
  readonly kind: 'axis' | 'bud' | 'end';
  /** Owner of the wood it grew from: it goes when that goes. 0 for the trunk. */
  readonly parent: number;
  /** Whether it carries leaves, and so is listed among the shoots. */
  readonly leafy: boolean;
}

export interface LeafBlade {
  readonly owner: number;
  /** Number of its node on the shoot, 1 at the base. */
  readonly node: number;
  /** Where the petiole leaves the bark, and where the blade begins. */
  readonly petioleFrom: Vec3;
  readonly bladeFrom: Vec3;
  /** Unit vectors: along the midrib to the tip; across the blade, to its right seen from above. */
  readonly along: Vec3;
  readonly across: Vec3;
  /** The outline's point [u, v] lies at bladeFrom + u * midribM * along + v * acrossScaleM * across. */
  readonly midribM: number;
  readonly acrossScaleM: number;
  /** Area of the drawn polygon, which is the published area for this midrib. */
  readonly areaM2: number;
}

export interface WoodStretch {
  readonly owner: number;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly fromRadiusM: number;
  readonly toRadiusM: number;
}

/** A node of a leafy shoot; node i of a canopy carries its leaf i. */
export interface ShootNode {
  readonly owner: number;
  /** 1 at the base. */
  readonly node: number;
  /**
   * Where its light is asked for: at the foot of its leaf blade, where a level sensor can be held. In the axil itself,
   * under the shoot's own leaves, no sensor was held in the trials whose thresholds are used.
   */
  readonly point: Vec3;
  /** Distance along the shoot, metres. */
  readonly atM: number;
}

export interface Shoot {
  readonly owner: number;
  /** Id of the axis or bud. */
  readonly id: string;
  readonly name: string;
  readonly path: readonly Vec3[];
  readonly lengthM: number;
  readonly baseDiameterM: number;
  /** 1 is a balanced shoot; fewer shoots on the same tree are stronger. */
  readonly vigour: number;
  /** Nodes at its base that bear no fig. */
  readonly blindNodes: number;
  readonly leafAreaM2: number;
}

export interface Canopy {
  /**
   * By number. The numbers depend on the tree alone, whatever is gone: first its axes in their order, then
   * the buds that can grow, then the ends told apart. Null: owner 0 (the surroundings), and all that is gone.
   */
  readonly owners: readonly (Owner | null)[];
  readonly leaves: readonly LeafBlade[];
  readonly wood: readonly WoodStretch[];
  readonly nodes: readonly ShootNode[];
  readonly shoots: readonly Shoot[];
  /** Outline of a blade for a midrib of 1, [along, across], petiole at the origin, tip at [1, 0]. */
  readonly outline: readonly (readonly [number, number])[];
}
