/** A branch pulled by one of its handles: tree file in, tree file out. */
import { parentsFirst } from '../../document/meaning/graph.ts';
import { findImpossibleWood } from '../../document/meaning/wood.ts';
import type { TreeFile } from '../../document/treeFile.ts';
import { pathLengthM } from '../../geometry/path.ts';
import { type PlacedAxis, placeTree } from '../../geometry/tree.ts';
import { origin, type Vec3 } from '../../geometry/vec.ts';
import { wrapDeg } from '../../geometry/world.ts';
import { axisOf, type Edited, refuse, type TreeAxis } from '../edit.ts';
import { move } from '../edits/move.ts';
import { aroundParentDeg, turnRound } from '../edits/turnRound.ts';
import type { Held } from './held.ts';
import { aroundAt, slideAlong, thicken } from './pullBase.ts';
import { pullBend } from './pullBend.ts';
import { pullTip } from './pullTip.ts';
import { inSketch, type Sight } from './sight.ts';

export type Pull =
  | { readonly by: 'tip'; readonly sight: Sight }
  /** The nth of `bendsOf`, from 0. */
  | { readonly by: 'bend'; readonly nth: number; readonly sight: Sight }
  /** Along the wood it grows from. */
  | { readonly by: 'base'; readonly sight: Sight }
  /** On a ring of that radius round the wood it grows from. */
  | { readonly by: 'round'; readonly radiusM: number; readonly sight: Sight }
  | { readonly by: 'thickness'; readonly times: number }
  /** By keys: so far along the wood it grows from, or so far round it, clockwise seen from its tip. */
  | { readonly by: 'slide'; readonly alongM: number }
  | { readonly by: 'turn'; readonly aroundDeg: number };

const trunkStays = 'The trunk stands in the soil and cannot be moved along or round a branch.';

/** @param file as it was when the hand took hold; a pull is always told from there */
export function pull(file: TreeFile, id: string, how: Pull, held: Held): Edited {
  const edited = pulled(file, id, how, held);
  if (!edited.ok) return edited;
  const wrong = findImpossibleWood(edited.file.axes, parentsFirst(edited.file.axes));
  return wrong === null ? edited : refuse(wrong.reason);
}

function pulled(file: TreeFile, id: string, how: Pull, held: Held): Edited {
  const axis = axisOf(file, id);
  if (how.by === 'thickness') {
    return held.has('thickness') ? refuse('The thickness is locked.') : thicken(file, axis, how.times);
  }
  if (how.by === 'slide' || how.by === 'turn') return stepped(file, axis, how);
  const sight = inSketch(file, how.sight);
  const placed = placeTree({ axes: file.axes }, { foot: origin, turnedDeg: 0 }).get(id) as PlacedAxis;
  const base = placed.path[0] as Vec3;
  if (how.by === 'tip') return pullTip(file, axis, base, sight, held);
  if (how.by === 'bend') return pullBend(file, axis, base, how.nth, sight, held);
  const { parent } = placed;
  if (parent === null) return refuse(trunkStays);
  if (how.by === 'base') return slideAlong(file, axis, parent.axis.id, parent.path, sight);
  const now = aroundParentDeg(file, axis) ?? 0;
  return turnRound(file, id, aroundAt(parent.path, axis.atM, how.radiusM, now, base, sight));
}

function stepped(file: TreeFile, axis: TreeAxis, how: Extract<Pull, { by: 'slide' | 'turn' }>): Edited {
  if (axis.parentId === null) return refuse(trunkStays);
  if (how.by === 'turn')
    return turnRound(file, axis.id, wrapDeg((aroundParentDeg(file, axis) ?? 0) + how.aroundDeg));
  const lengthM = pathLengthM(axisOf(file, axis.parentId).path);
  return move(file, axis.id, axis.parentId, Math.min(lengthM, Math.max(0, axis.atM + how.alongM)));
}
