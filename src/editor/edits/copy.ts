/** A limb copied with all that grows on it: round its parent, or mirrored to the other side. */
import type { TreeFile } from '../../document/treeFile.ts';
import { pathLengthM, tangentAt } from '../../geometry/path.ts';
import { withDescendants } from '../../geometry/tree.ts';
import { add, dot, rotate, scale, type Vec3 } from '../../geometry/vec.ts';
import { direction, rad, turnAboutUpright, wind } from '../../geometry/world.ts';
import { axisOf, type Edited, refuse, type TreeAxis } from '../edit.ts';
import { branchFigures } from '../figures.ts';
import { freshIds, freshName, namesOf } from '../freshIds.ts';
import { outside } from '../limits.ts';
import { turnWood } from '../turnWood.ts';
import { leavesOf } from './leaves.ts';

/** A tree file holds at most this many branches. */
const mostAxes = 5000;

export interface Round {
  /** Limbs there are to be in all, the one that is copied among them. */
  readonly count: number;
  /** How much further along the parent each next one leaves it, metres; below 0 nearer to its base. */
  readonly stepM: number;
}

/** Puts copies evenly round the wood it grows from; round the trunk about the upright. */
export function copyRound(file: TreeFile, id: string, { count, stepM }: Round): Edited {
  const complaint = outside('copies', count);
  if (complaint !== null) return refuse(complaint);
  const axis = axisOf(file, id);
  if (axis.parentId === null) return refuse('The trunk cannot be copied. Choose a limb on it.');
  const parent = axisOf(file, axis.parentId);
  const lastM = axis.atM + (count - 1) * stepM;
  if (!(lastM >= 0 && lastM <= pathLengthM(parent.path)))
    return refuse(`The last copy would not be on ${parent.name}. Give a smaller step along it, or fewer.`);
  const hinge = tangentAt(parent.path, axis.atM);
  let next = file;
  for (let i = 1; i < count; i++) {
    const turnedDeg = (i * 360) / count;
    const turn =
      parent.parentId === null
        ? (v: Vec3) => turnAboutUpright(v, turnedDeg)
        : (v: Vec3) => rotate(v, hinge, -rad(turnedDeg));
    const grown = withCopy(next, axis, axis.atM + i * stepM, turn);
    if (grown === null) return tooMany;
    next = grown;
  }
  const others = count === 2 ? 'a copy' : `${count - 1} copies`;
  return { ok: true, file: next, said: `Put ${others} of ${axis.name} round ${parent.name}` };
}

const tooMany: Edited = refuse(`A tree holds at most ${mostAxes} branches. Make fewer copies.`);

/** Puts its mirror image on the other side of the wood it grows from, across the plane square to its side. */
export function mirror(file: TreeFile, id: string): Edited {
  const axis = axisOf(file, id);
  if (axis.parentId === null) return refuse('The trunk cannot be mirrored. Choose a limb on it.');
  const out = direction(branchFigures(axis).bearingDeg, 0);
  const turn = (v: Vec3): Vec3 => add(v, scale(out, -2 * dot(v, out)));
  const next = withCopy(file, axis, axis.atM, turn);
  if (next === null) return tooMany;
  return { ok: true, file: next, said: `Mirrored ${axis.name} to the other side` };
}

/** The file with a copy of the branch and all on it, at the end; null when that is too much. */
function withCopy(file: TreeFile, axis: TreeAxis, atM: number, turn: (v: Vec3) => Vec3): TreeFile | null {
  const going = new Set(withDescendants({ axes: file.axes }, axis.id));
  const originals = file.axes.filter((one) => going.has(one.id));
  if (file.axes.length + originals.length > mostAxes) return null;
  const ids = freshIds(file, originals.length);
  const newId = new Map(originals.map((one, i) => [one.id, ids[i] as string]));
  const used = namesOf(file);
  const limb = turnWood(axis, turn);
  const limbName = freshName(used, copyName(file, axis, branchFigures(limb).bearingDeg));
  const copies = originals.map((one): TreeAxis => {
    const copied = turnWood(one, turn);
    const id = newId.get(one.id) as string;
    return {
      ...copied,
      id,
      parentId: newId.get(one.parentId ?? '') ?? one.parentId,
      atM: one === axis ? atM : one.atM,
      name: one === axis ? limbName : freshName(used, renamed(one.name, axis.name, limbName)),
      buds: copied.buds.map((bud, i) => ({ ...bud, id: `${id}-bud${i + 1}` })),
      foliage: one.foliage && leavesOf(one.foliage.count, 'estimated', one.foliage.midribM, 'estimated'),
    };
  });
  return { ...file, axes: [...file.axes, ...copies] };
}

/** "West limb" of a copy of the "East limb". Any other name goes on, with a number. */
function copyName(file: TreeFile, axis: TreeAxis, bearingDeg: number): string {
  const old = wind(branchFigures(axis).bearingDeg);
  const side = wind(bearingDeg);
  const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
  const base = axis.name.replace(/ \d+$/, '');
  if (base.startsWith(capital(old))) return base.replace(capital(old), capital(side));
  const parentName = file.axes.find((one) => one.id === axis.parentId)?.name ?? '';
  const [head, tail] = base.startsWith(parentName) ? [parentName, base.slice(parentName.length)] : ['', base];
  return head + tail.replace(new RegExp(`\\b${old}\\b`), side);
}

/** Names of what grows on a limb begin with the limb's. */
const renamed = (name: string, oldLimb: string, newLimb: string): string =>
  name.startsWith(oldLimb) ? newLimb + name.slice(oldLimb.length) : `${newLimb}, ${name}`;
