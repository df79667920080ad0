/** Where the handles of a branch lie in the world. */
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf } from '../../document/views.ts';
import { outwardAt, pointAt, tangentAt } from '../../geometry/path.ts';
import { type PlacedAxis, placeTree } from '../../geometry/tree.ts';
import { add, type Vec3 } from '../../geometry/vec.ts';
import { turnAboutUpright } from '../../geometry/world.ts';
import { axisOf } from '../edit.ts';
import { aroundParentDeg } from '../edits/turnRound.ts';
import { bendsOf } from './pullBend.ts';

export interface HandlePlaces {
  readonly base: Vec3;
  readonly tip: Vec3;
  /** From base to tip. */
  readonly bends: readonly Vec3[];
  /** Where the thickness is taken: on the centre line, with the direction of the wood there. */
  readonly thick: { readonly at: Vec3; readonly along: Vec3; readonly diameterM: number };
  /** Null for the trunk. */
  readonly parent: {
    /** Unit direction from the centre of the wood that it grows from towards where it sits, and the direction of that wood. */
    readonly outward: Vec3;
    readonly along: Vec3;
    /** Directions that go round it evenly, to draw a ring by. */
    readonly round: readonly Vec3[];
  } | null;
}

/** Thickness is taken here, as a share of the length: clear of the base, where others lie. Our choice. */
const thickShare = 0.12;
const ringSteps = 24;

/** Null when there is no such branch. */
export function handlePlaces(file: TreeFile, id: string): HandlePlaces | null {
  const stance = stanceOf(file);
  const placed = placeTree({ axes: file.axes }, stance).get(id);
  if (placed === undefined) return null;
  const { path, lengthM, axis } = placed;
  const atM = thickShare * lengthM;
  const taken = axis.baseDiameterM + (axis.tipDiameterM - axis.baseDiameterM) * thickShare;
  return {
    base: path[0] as Vec3,
    tip: path[path.length - 1] as Vec3,
    bends: bendsOf(axis.path).map((bendM) => pointAt(path, bendM)),
    thick: { at: pointAt(path, atM), along: tangentAt(path, atM), diameterM: taken },
    parent: placed.parent === null ? null : ringOf(file, placed, placed.parent, stance.turnedDeg),
  };
}

function ringOf(
  file: TreeFile,
  { axis }: PlacedAxis,
  parent: PlacedAxis,
  turnedDeg: number,
): HandlePlaces['parent'] {
  const outwardTo = (aroundDeg: number): Vec3 =>
    turnAboutUpright(outwardAt(parent.axis.path, axis.atM, aroundDeg), turnedDeg);
  return {
    outward: outwardTo(aroundParentDeg(file, axisOf(file, axis.id)) ?? 0),
    along: tangentAt(parent.path, axis.atM),
    round: Array.from({ length: ringSteps }, (_, i) => outwardTo((i * 360) / ringSteps)),
  };
}

/** A point so far out from another. */
export const outFrom = (centre: Vec3, outward: Vec3, radiusM: number): Vec3 =>
  add(centre, [outward[0] * radiusM, outward[1] * radiusM, outward[2] * radiusM]);
