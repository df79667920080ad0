/** The canopy of a tree at a date: what stands, and what its buds will have grown by then. */
import type { Path } from '../geometry/path.ts';
import { hashText } from '../geometry/random.ts';
import { type PlacedAxis, placeTree, type Stance, type Tree } from '../geometry/tree.ts';
import { distance, type Vec3 } from '../geometry/vec.ts';
import { figLeafOutline } from '../species/fig/leafOutline.ts';
import type { FigValues } from '../species/fig.ts';
import type { Canopy, LeafBlade, Shoot, ShootNode, WoodStretch } from './canopy.ts';
import { leafMaker } from './leafPose.ts';
import { budShoot, type Conditions, type LeafyShoot, standingShoot } from './leafyShoot.ts';
import { isLeafy, type Member, numberMembers, ownersOf } from './owners.ts';
import { blindNodes } from './shootForm.ts';
import { stationsOn } from './shootPath.ts';
import { standUp } from './standUp.ts';
import { budVigour, shareReserve } from './vigour.ts';

export interface GrowthInput {
  readonly tree: Tree;
  readonly stance: Stance;
  readonly values: FigValues;
  /** Heat since bud break at the date wanted, degree-days above 8 C. */
  readonly heatGdd8: number;
  readonly seed: number;
  /** Ids of axes and buds that are not there, and with them all that grew from them. */
  readonly gone: ReadonlySet<string>;
  /**
   * Ids of axes and buds that grow but are not counted when the reserve is shared: candidates for cutting, drawn
   * as strong as the shoots of the tree without them. Default: none.
   */
  readonly notSharing?: ReadonlySet<string>;
}

/** The wood of a path, its radius falling straight from base to tip. */
function woodOf(owner: number, path: Path, lengthM: number, baseM: number, tipM: number): WoodStretch[] {
  const stretches: WoodStretch[] = [];
  let atM = 0;
  const radius = (m: number): number =>
    (baseM + (tipM - baseM) * (lengthM > 0 ? Math.min(1, m / lengthM) : 0)) / 2;
  for (let i = 1; i < path.length; i++) {
    const [from, to] = [path[i - 1] as Vec3, path[i] as Vec3];
    const nextM = atM + distance(from, to);
    stretches.push({ owner, from, to, fromRadiusM: radius(atM), toRadiusM: radius(nextM) });
    atM = nextM;
  }
  return stretches;
}

/** Leaves and nodes of one shoot. */
function dress(shoot: LeafyShoot, makeLeaf: ReturnType<typeof leafMaker>) {
  const { owner, path, form, tipDiameterM } = shoot;
  const key = hashText(shoot.id);
  const leaves: LeafBlade[] = [];
  const nodes: ShootNode[] = [];
  stationsOn(path, form.nodesM).forEach((station, i) => {
    const node = i + 1;
    const atM = form.nodesM[i] as number;
    const share = form.lengthM > 0 ? atM / form.lengthM : 0;
    const radiusM = (form.baseDiameterM + (tipDiameterM - form.baseDiameterM) * share) / 2;
    const size = shoot.leafSizes[i] as LeafyShoot['leafSizes'][number];
    const leaf = makeLeaf({ owner, node, station, radiusM, key, ...size });
    leaves.push(leaf);
    nodes.push({ owner, node, point: leaf.bladeFrom, atM });
  });
  return { leaves, nodes };
}

function summary(shoot: LeafyShoot, leaves: readonly LeafBlade[], values: FigValues): Shoot {
  const { owner, id, name, path, form, vigour } = shoot;
  return {
    owner,
    id,
    name,
    path,
    lengthM: form.lengthM,
    baseDiameterM: form.baseDiameterM,
    vigour,
    blindNodes: blindNodes(form, values),
    leafAreaM2: leaves.reduce((sum, leaf) => sum + leaf.areaM2, 0),
  };
}

/** Every shoot in leaf: the standing ones in the order of the axes, then those of the buds. */
function leafyShoots(
  members: readonly Member[],
  placed: ReadonlyMap<string, PlacedAxis>,
  input: GrowthInput,
  conditions: Conditions,
): LeafyShoot[] {
  const { values, seed } = input;
  const sharing = shareReserve(members, placed, input.notSharing ?? new Set(), values);
  return members.flatMap((member) => {
    const wood = placed.get(member.axis.id) as PlacedAxis;
    if (member.gone || (member.bud === null && !isLeafy(member.axis))) return [];
    if (member.bud === null) return [standingShoot(member, wood, values)];
    const vigour = budVigour(wood, member.bud, sharing, values, seed);
    return budShoot(member, wood, vigour, conditions) ?? [];
  });
}

/**
 * Grows the canopy. Deterministic: chance is keyed by seed and id, so that a bud grows alike whatever else is
 * there, but for the vigour it shares. Leaves of standing shoots are as measured and take no notice of the heat
 * sum; their number of lobes, size along the shoot and pose are the model's.
 * The tree is grown as it was sketched and then turned, so a turned pot carries the same canopy. The site, its
 * walls and its pot are not known here: a blade may dip into the pot's rim, never into the ground at height 0.
 * Throws when the heat sum is no number or an id is used twice.
 */
export function growCanopy(input: GrowthInput): Canopy {
  const { tree, stance, values, heatGdd8, seed, gone } = input;
  if (!Number.isFinite(heatGdd8))
    throw new Error(`growCanopy: the heat sum must be a number, got ${heatGdd8}`);
  const placed = placeTree(tree, { foot: [0, 0, 0], turnedDeg: 0 });
  const members = numberMembers(tree, gone);
  const groundM = -stance.foot[1];
  const conditions: Conditions = { heatGdd8, groundM, seed, values };
  const makeLeaf = leafMaker(figLeafOutline, groundM, seed, values);

  const shoots = leafyShoots(members, placed, input, conditions);
  const wood = members.flatMap(({ owner, axis, bud, gone: isGone }) => {
    if (bud !== null || isGone) return [];
    const { path, lengthM } = placed.get(axis.id) as PlacedAxis;
    return woodOf(owner, path, lengthM, axis.baseDiameterM, axis.tipDiameterM);
  });
  const axisCount = tree.axes.length;
  const grown = shoots.filter((shoot) => shoot.owner > axisCount);
  const grownWood = grown.flatMap(({ owner, path, form, tipDiameterM }) =>
    woodOf(owner, path, form.lengthM, form.baseDiameterM, tipDiameterM),
  );
  const dressed = shoots.map((shoot) => dress(shoot, makeLeaf));
  const canopy: Canopy = {
    owners: ownersOf(members, new Set(shoots.map((shoot) => shoot.owner))),
    leaves: dressed.flatMap((one) => one.leaves),
    wood: [...wood, ...grownWood],
    nodes: dressed.flatMap((one) => one.nodes),
    shoots: shoots.map((shoot, i) => summary(shoot, dressed[i]?.leaves ?? [], values)),
    outline: figLeafOutline,
  };
  return standUp(canopy, stance);
}
