/** The tree as it may be, by the errors of tape and eye. */
import { type Path, pathLengthM } from '../../geometry/path.ts';
import { hashText, random01 } from '../../geometry/random.ts';
import { type Axis, midribSource, type Tree } from '../../geometry/tree.ts';
import { cross, dot, normalize, rotate, scale, up, type Vec3 } from '../../geometry/vec.ts';
import { direction, rad, turnAboutUpright } from '../../geometry/world.ts';
import type { CutToMake } from '../applyCuts.ts';
import { deviate, type World } from './deviate.ts';

/**
 * Standard deviations, our choice: a tape laid along crooked wood, an eye or a phone held to the limb. Phone compasses in the field
 * are within a few degrees where no metal is near (Allmendinger, Siron & Scott 2017, J. Struct. Geol. 102:96-112; abstract
 * seen); the eye that reads eight winds is 13 degrees off, 45 over the root of 12.
 */
export const sketchErrors = {
  /** Of a length: of the reading, and with the length. */
  tapeM: 0.01,
  lengthShare: 0.03,
  bearingDeg: 7,
  elevationDeg: 5,
  /** Of a trunk: an eye knows upright better than sloping. */
  trunkLeanDeg: 2,
  /** Where along its wood a bud or branch sits, beside the error of that wood's length; and on which side of it. */
  placeM: 0.01,
  aroundDeg: 15,
  thicknessShare: 0.05,
  measuredMidribShare: 0.05,
  estimatedMidribShare: 0.15,
} as const;

/** What a number is for. */
const [lengthWord, bearingWord, elevationWord, placeWord, aroundWord, thicknessWord, midribWord, hingeWord] =
  [1, 2, 3, 4, 5, 6, 7, 8] as const;

/** Buds this near the end of the wood are the ones at its end, metres. */
const atTipM = 0.01;

export interface WorldTree {
  readonly tree: Tree;
  /** The same cut there: it stays between the same buds and branches. */
  cut<Any extends CutToMake>(cut: Any): Any;
}

/** Leaf counts, and the order of buds and branches along their wood, are right in every world: a grower sees them. */
export function worldTree(tree: Tree, world: World): WorldTree {
  const along = new Map(tree.axes.map((axis) => [axis.id, placesAlong(axis, tree, world)]));
  const placeOn = (id: string | null, atM: number): number =>
    id === null ? atM : (along.get(id)?.(atM) ?? atM);
  return {
    tree: { axes: tree.axes.map((axis) => worldAxis(axis, placeOn, world)) },
    cut: (cut) => ({ ...cut, atM: cut.kind === 'rub off bud' ? cut.atM : placeOn(cut.target, cut.atM) }),
  };
}

function worldAxis(axis: Axis, placeOn: (id: string | null, atM: number) => number, world: World): Axis {
  const key = hashText(axis.id);
  const thickness = 1 + sketchErrors.thicknessShare * deviate(world, thicknessWord, key);
  const { foliage } = axis;
  return {
    ...axis,
    atM: placeOn(axis.parentId, axis.atM),
    path: worldPath(axis, world),
    baseDiameterM: axis.baseDiameterM * thickness,
    tipDiameterM: axis.tipDiameterM * thickness,
    buds: axis.buds.map((bud) => ({
      ...bud,
      atM: placeOn(axis.id, bud.atM),
      aroundDeg: bud.aroundDeg + sketchErrors.aroundDeg * deviate(world, aroundWord, hashText(bud.id)),
    })),
    foliage: foliage && { ...foliage, midribM: foliage.midribM * midribFactor(midribSource(foliage), world) },
  };
}

/** One for the tree: its leaves are measured by one and the same ruler, or guessed by one and the same eye. */
function midribFactor(source: 'measured' | 'estimated', world: World): number {
  const { measuredMidribShare, estimatedMidribShare } = sketchErrors;
  return (
    1 + (source === 'measured' ? measuredMidribShare : estimatedMidribShare) * deviate(world, midribWord)
  );
}

function lengthFactor({ id, path }: Axis, world: World): number {
  const lengthM = pathLengthM(path);
  if (!(lengthM > 0)) return 1;
  const errorM = Math.hypot(sketchErrors.tapeM, sketchErrors.lengthShare * lengthM);
  return Math.max(0.5, 1 + (errorM / lengthM) * deviate(world, lengthWord, hashText(id)));
}

/** Turned about its base by the errors of bearing and slope, and stretched. */
function worldPath(axis: Axis, world: World): Path {
  const { path, parentId, id } = axis;
  const key = hashText(id);
  const factor = lengthFactor(axis, world);
  const slopeDeg = parentId === null ? sketchErrors.trunkLeanDeg : sketchErrors.elevationDeg;
  const leanRad = rad(slopeDeg * deviate(world, elevationWord, key));
  const turnDeg = sketchErrors.bearingDeg * deviate(world, bearingWord, key);
  const hinge = hingeOf(path, 360 * random01(world.seed, world.number >> 1, hingeWord, key));
  return path.map((offset) => scale(turnAboutUpright(rotate(offset, hinge, leanRad), turnDeg), factor));
}

/** The level line about which the wood rises or sinks; upright wood leans to any side. */
function hingeOf(path: Path, anyBearingDeg: number): Vec3 {
  const across = cross(path.at(-1) as Vec3, up);
  return dot(across, across) > 1e-9 ? normalize(across) : direction(anyBearingDeg, 0);
}

/** Where points along an axis lie: straight between its buds and branches, which keep their order. */
function placesAlong(axis: Axis, tree: Tree, world: World): (atM: number) => number {
  const lengthM = pathLengthM(axis.path);
  const nowM = lengthM * lengthFactor(axis, world);
  const stretch = lengthM > 0 ? nowM / lengthM : 1;
  const children = tree.axes.filter(({ parentId }) => parentId === axis.id);
  const items = [...axis.buds, ...children]
    .filter(({ atM }) => atM > 0 && atM < lengthM - atTipM)
    .sort((a, b) => a.atM - b.atM);
  const drawn = items.map(({ id, atM }) => {
    const placeM = atM * stretch + sketchErrors.placeM * deviate(world, placeWord, hashText(id));
    return Math.max(0, Math.min(nowM - atTipM * stretch, placeM));
  });
  drawn.sort((a, b) => a - b);
  const knots: (readonly [fromM: number, toM: number])[] = [[0, 0]];
  items.forEach(({ atM }, i) => {
    if (atM > (knots.at(-1)?.[0] ?? 0)) knots.push([atM, drawn[i] as number]);
  });
  if (lengthM - atTipM > (knots.at(-1)?.[0] ?? 0)) knots.push([lengthM - atTipM, nowM - atTipM * stretch]);
  if (lengthM > (knots.at(-1)?.[0] ?? 0)) knots.push([lengthM, nowM]);
  return (atM) => between(knots, atM);
}

function between(knots: readonly (readonly [number, number])[], atM: number): number {
  for (let i = 1; i < knots.length; i++) {
    const [[from, to], [nextFrom, nextTo]] = [knots[i - 1] as [number, number], knots[i] as [number, number]];
    if (atM <= nextFrom) return to + ((nextTo - to) * (atM - from)) / (nextFrom - from);
  }
  return knots.at(-1)?.[1] ?? atM;
}
