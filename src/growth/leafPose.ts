/** How a leaf stands on its shoot: petiole, direction, droop and roll. */
import { random01, randomNormal } from '../geometry/random.ts';
import { add, cross, dot, length, normalize, rotate, scale, sub, type Vec3 } from '../geometry/vec.ts';
import { rad } from '../geometry/world.ts';
import type { FigValues } from '../species/fig.ts';
import type { LeafBlade } from './canopy.ts';
import { leafAreaM2 } from './leafArea.ts';
import { type Outline, outlineArea } from './outline.ts';
import { lean, outOfCrown, type Station } from './shootPath.ts';

interface LeafAt {
  readonly owner: number;
  readonly node: number;
  readonly station: Station;
  readonly radiusM: number;
  readonly midribM: number;
  /** 0.3 when it unfolds to 1 when full-grown. */
  readonly expansion: number;
  /** Whole number that stands for the shoot. */
  readonly key: number;
}

/** Blades keep this far above the ground, metres. */
const clearanceM = 0.01;

/** The side of the shoot on which a leaf sits: each is turned by the divergence from the one below. */
export function leafSide(station: Station, node: number, key: number, seed: number, values: FigValues): Vec3 {
  const firstDeg = 360 * random01(seed, key, 4);
  const strayDeg = 8 * randomNormal(seed, key, 5, node);
  return rotate(station.side, station.along, rad(firstDeg + node * values.divergenceDeg + strayDeg));
}

/**
 * Direction of the petiole: leaned off the shoot to the leaf's side. On leaning shoots petioles twist until the
 * leaves stand in two ranks, so a side that looks down is turned level; then the petiole is lifted to the light.
 */
function petioleDirection(leaf: LeafAt, side: Vec3, seed: number, values: FigValues): Vec3 {
  const { along } = leaf.station;
  const beside = cross(along, side);
  const rank = beside[1] > 0 ? 1 : -1;
  const twist = side[1] < 0 ? rank * Math.asin(Math.min(1, -side[1])) * 0.8 : 0;
  const twisted = rotate(side, along, twist);
  const angle = values.petioleAngleDeg + 8 * randomNormal(seed, leaf.key, 6, leaf.node);
  return normalize(add(lean(along, twisted, angle), [0, 0.3, 0]));
}

/** Level heading of a blade: the petiole's, drawn a little out of the crown. */
function heading(petiole: Vec3, side: Vec3, point: Vec3): Vec3 {
  const out = outOfCrown(point);
  const level: Vec3 = [petiole[0] + 0.3 * side[0], 0, petiole[2] + 0.3 * side[2]];
  const drawn = add(level, scale(out, 0.25));
  return length(drawn) > 1e-6 ? normalize(drawn) : [0, 0, -1];
}

/** Blade axes: heading and droop give the midrib, the roll turns the blade about it. Young blades stand up. */
function bladeAxes(
  leaf: LeafAt,
  level: Vec3,
  seed: number,
  values: FigValues,
): { along: Vec3; across: Vec3 } {
  const spread = values.bladeDroopSpreadDeg * randomNormal(seed, leaf.key, 7, leaf.node);
  const youth = (1 - leaf.expansion) / 0.7;
  const droop = rad(Math.min(80, Math.max(-60, values.bladeDroopDeg + spread - 75 * youth)));
  const along = normalize(add(scale(level, Math.cos(droop)), [0, -Math.sin(droop), 0]));
  const flat: Vec3 = [-level[2], 0, level[0]];
  const roll = rad(values.bladeRollSpreadDeg * randomNormal(seed, leaf.key, 8, leaf.node));
  const turned = rotate(flat, along, roll);
  return { along, across: normalize(sub(turned, scale(along, dot(turned, along)))) };
}

/** How far the lowest corner of a blade lies below a height; 0 when it clears it. */
function dipM(blade: Omit<LeafBlade, 'areaM2'>, outline: Outline, heightM: number): number {
  if (blade.bladeFrom[1] - 1.5 * Math.max(blade.midribM, blade.acrossScaleM) > heightM) return 0;
  let lowest = Infinity;
  for (const [u, v] of outline) {
    const y = u * blade.midribM * blade.along[1] + v * blade.acrossScaleM * blade.across[1];
    lowest = Math.min(lowest, blade.bladeFrom[1] + y);
  }
  return Math.max(0, heightM - lowest);
}

/**
 * Makes leaves. The midrib is the outline's length; its width is scaled so that the polygon's area is the
 * published area, since that grows as C^1.5451 and not as C^2: small blades come out broader than large ones.
 * A blade that would reach into the ground is lifted on its petiole until it clears it by 1 cm.
 */
export function leafMaker(outline: Outline, groundM: number, seed: number, values: FigValues) {
  const unitArea = outlineArea(outline);
  return (leaf: LeafAt): LeafBlade => {
    const side = leafSide(leaf.station, leaf.node, leaf.key, seed, values);
    const petiole = petioleDirection(leaf, side, seed, values);
    const petioleFrom = add(leaf.station.point, scale(side, leaf.radiusM));
    const petioleM = (values.petioleCm / 100) * (leaf.midribM / 0.2);
    const { along, across } = bladeAxes(leaf, heading(petiole, side, leaf.station.point), seed, values);
    const areaM2 = leafAreaM2(leaf.midribM, values);
    const acrossScaleM = areaM2 / (leaf.midribM * unitArea);
    const { owner, node, midribM } = leaf;
    const bladeFrom = add(petioleFrom, scale(petiole, petioleM));
    const blade = { owner, node, petioleFrom, bladeFrom, along, across, midribM, acrossScaleM };
    const lifted = add(bladeFrom, [0, dipM(blade, outline, groundM + clearanceM), 0]);
    return { ...blade, bladeFrom: lifted, areaM2 };
  };
}
