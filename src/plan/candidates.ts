/** What the search may take or leave: buds that have just broken, or this season's shoots in leaf. */
import { pointAt } from '../geometry/path.ts';
import { type Bud, limbOf, type PlacedAxis, placeBud } from '../geometry/tree.ts';
import { dot, normalize, scale, sub, type Vec3 } from '../geometry/vec.ts';
import { isGreen, type RuleContext } from './ruleContext.ts';
import { lowestScaffoldM } from './rules/suckers.ts';
import type { Stage } from './windows.ts';

export interface Candidate {
  /** Id of the bud or of the shoot. */
  readonly id: string;
  readonly kind: 'rub off bud' | 'remove';
  /** The bud, when it is one. */
  readonly bud: Bud | null;
  /** The shoot itself, when it is one; else the branch the bud sits on. */
  readonly axis: PlacedAxis;
  /** The branch it sits on, and where along it, metres. */
  readonly on: PlacedAxis;
  readonly atM: number;
  /** Unit vector out of that branch. */
  readonly outward: Vec3;
  /** The limb from the trunk it belongs to; null on the trunk itself. */
  readonly limb: PlacedAxis | null;
  /** Fruiting shoots that limb may keep; no limit on the trunk itself. */
  readonly limbHolds: number;
  /** Whether it leaves that limb so near its base that the limb could be cut back to it and renewed from there. */
  readonly renews: boolean;
  /** Set on the trunk, lower than the first fork as it is or is wanted: both heights above the soil, metres. */
  readonly belowFork: { readonly heightM: number; readonly forkM: number } | null;
  /** The outermost growth of its branch, which carries the branch on. */
  readonly leads: boolean;
  /** The grower's word. */
  readonly pinnedKeep: boolean;
}

/** Candidates of a tree whose faults are taken out. None while the tree rests. In the order of the tree. */
export function candidatesOf(context: RuleContext, stage: Stage): Candidate[] {
  if (stage === 'rest') return [];
  const limits: TreeLimits = { forkM: forkHeightM(context), holds: limbHolds(context) };
  return [...context.placed.values()].flatMap((axis): Candidate[] => {
    const sound = axis.axis.condition === 'live';
    const { parent } = axis;
    if (sound && parent !== null && isGreen(context, axis) && (axis.axis.foliage?.count ?? 0) > 0) {
      const isShoot = stage === 'in leaf' && axis.axis.kind !== 'sucker';
      return isShoot ? [ofShoot(context, axis, parent, limits)] : [];
    }
    if (!sound || axis.axis.foliage !== null) return [];
    return axis.axis.buds.map((bud) => ofBud(context, axis, bud, limits));
  });
}

/** Names of the scaffolds that carry candidates, but none near their base to renew them from. */
export function bareBases(candidates: readonly Candidate[]): string[] {
  const limbs = new Set(candidates.map(({ limb }) => limb));
  for (const { limb, renews } of candidates) if (renews) limbs.delete(limb);
  return [...limbs].flatMap((limb) => (limb?.axis.kind === 'scaffold' ? [limb.axis.name] : []));
}

interface TreeLimits {
  readonly forkM: number;
  readonly holds: ReadonlyMap<PlacedAxis, number>;
}

function ofBud(context: RuleContext, axis: PlacedAxis, bud: Bud, limits: TreeLimits): Candidate {
  const { outward } = placeBud(axis, bud);
  const where = whereOn(context, axis, bud.atM, outward, limits);
  return { id: bud.id, kind: 'rub off bud', bud, axis, pinnedKeep: bud.pin === 'keep', ...where };
}

function ofShoot(context: RuleContext, axis: PlacedAxis, parent: PlacedAxis, limits: TreeLimits): Candidate {
  const leaving = sub(pointAt(axis.path, Math.min(0.05, axis.lengthM)), axis.path[0] as Vec3);
  const where = whereOn(context, parent, axis.axis.atM, normalize(leaving), limits);
  return {
    id: axis.axis.id,
    kind: 'remove',
    bud: null,
    axis,
    pinnedKeep: axis.axis.pin === 'keep',
    ...where,
  };
}

function whereOn(
  context: RuleContext,
  on: PlacedAxis,
  atM: number,
  outward: Vec3,
  { forkM, holds }: TreeLimits,
) {
  const heightM = pointAt(on.path, atM)[1] - context.soilM;
  const limb = limbOf(on);
  const capacity = limb === null ? Number.POSITIVE_INFINITY : (holds.get(limb) ?? 0);
  const belowFork = on.parent === null && heightM < forkM ? { heightM, forkM } : null;
  const renews =
    limb !== null && leavesLimbAtM(limb, on, atM) <= context.values.renewalWithinFraction * limb.lengthM;
  const leads = outermost(context, on) <= atM;
  return { on, atM, outward, limb, limbHolds: capacity, renews, belowFork, leads };
}

/** Where along the limb that leaves it which carries this place, metres; the place itself where it sits on the limb. */
function leavesLimbAtM(limb: PlacedAxis, on: PlacedAxis, atM: number): number {
  let [branch, leavesM] = [on, atM];
  while (branch !== limb && branch.parent !== null) [leavesM, branch] = [branch.axis.atM, branch.parent];
  return leavesM;
}

/** Where the outermost bud or live branch of a branch sits, metres along it. */
function outermost(context: RuleContext, { axis }: PlacedAxis): number {
  const live = context.childrenOf(axis.id).filter((child) => child.axis.condition === 'live');
  return Math.max(...axis.buds.map(({ atM }) => atM), ...live.map((child) => child.axis.atM));
}

/**
 * Height of the lowest scaffold above the soil, metres. On a tree without one: where its fork is wanted, if the trunk
 * carries buds enough above that for three limbs; else 0.
 */
function forkHeightM(context: RuleContext): number {
  const lowestM = lowestScaffoldM(context);
  if (Number.isFinite(lowestM)) return lowestM;
  const wantedM = context.values.trunkHeightCm / 100;
  const heightM = (atM: number): number => pointAt(context.trunk.path, atM)[1] - context.soilM;
  const above = context.trunk.axis.buds.filter((bud) => heightM(bud.atM) >= wantedM).length;
  return above >= 3 ? wantedM : 0;
}

/** One shoot for so much wood of the limb and of what grew on it, this season's green shoots left out; a small limb holds the fixed number. */
function limbHolds(context: RuleContext): ReadonlyMap<PlacedAxis, number> {
  const { values } = context;
  const woodM = new Map<PlacedAxis, number>();
  for (const axis of context.placed.values()) {
    const limb = limbOf(axis);
    if (limb !== null && !isGreen(context, axis)) woodM.set(limb, (woodM.get(limb) ?? 0) + axis.lengthM);
  }
  const holds = (m: number): number =>
    Math.max(values.shootsPerScaffold, Math.floor((100 * m) / values.shootPerWoodCm));
  return new Map([...woodM].map(([limb, m]) => [limb, holds(m)]));
}

/** Outward directions within this of each other, round the branch, are the same side, degrees; our choice. */
const sameSideDeg = 60;

/** Whether two candidates sit on the same side of the same branch nearer than the spacing asked for. */
export function tooClose(a: Candidate, b: Candidate, spacingM: number): boolean {
  if (a.on !== b.on || Math.abs(a.atM - b.atM) >= spacingM) return false;
  return dot(acrossBranch(a), acrossBranch(b)) > Math.cos((sameSideDeg * Math.PI) / 180);
}

/** The outward direction without its part along the branch; unit vector, or as it is where nothing is left. */
function acrossBranch({ on, atM, outward }: Candidate): Vec3 {
  const before = pointAt(on.path, atM - 0.005);
  const after = pointAt(on.path, atM + 0.005);
  const stretch = sub(after, before);
  const along2 = dot(stretch, stretch);
  if (along2 === 0) return outward;
  const across = sub(outward, scale(stretch, dot(outward, stretch) / along2));
  return dot(across, across) < 1e-12 ? outward : normalize(across);
}
