/** A branch drawn from another: tree file in, tree file out. On a tree of nothing but a trunk, the trunk is drawn on from its end. */
import { parentsFirst } from '../../document/meaning/graph.ts';
import { findImpossibleWood } from '../../document/meaning/wood.ts';
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf } from '../../document/views.ts';
import { type Path, pathLengthM, pathUpTo } from '../../geometry/path.ts';
import { add as add3, sub, type Vec3 } from '../../geometry/vec.ts';
import { turnAboutUpright } from '../../geometry/world.ts';
import { axisOf, type Edited, refuse, withAxes } from '../edit.ts';
import { add } from '../edits/add.ts';
import { branchFigures } from '../figures.ts';
import { firstGuess, thicknessOnM } from '../firstGuess.ts';
import { outside } from '../limits.ts';
import { asPath } from '../pull/rewood.ts';
import type { Start } from './workPlane.ts';

/** From here on, as a share of its length, a lone trunk is drawn on rather than branched. Our choice. */
const trunkEnds = 0.6;
/** Wood between two leaves of a shoot that is drawn, metres. Common practice for a fig of middling vigour. */
const internodeM = 0.035;
const mostLeaves = 40;

/** Nothing finer than a nanometre is kept: what a turn there and back leaves behind is no depth. */
const settled = (c: number): number => Math.round(c * 1e9) / 1e9 + 0;

/** Offsets from a point of the world as the file holds them: north as it was when the tree was sketched. */
export function offsetsFrom(file: TreeFile, base: Vec3, path: Path): Path {
  const { turnedDeg } = stanceOf(file);
  return path.map((point): Vec3 => {
    const [x, y, z] = turnAboutUpright(sub(point, base), -turnedDeg);
    return [settled(x), settled(y), settled(z)];
  });
}

export const isTrunkDrawnOn = (file: TreeFile, { parentId, atM }: Start): boolean =>
  file.axes.length === 1 && atM > trunkEnds * pathLengthM(axisOf(file, parentId).path);

/** @param path in the world, from the start on */
export function drawBranch(file: TreeFile, start: Start, path: Path): Edited {
  const edited = isTrunkDrawnOn(file, start) ? drawTrunkOn(file, start, path) : drawNew(file, start, path);
  return edited.ok ? checked(edited) : edited;
}

/** A drawing of wood that cannot be is refused. */
export function checked(edited: Edited & { readonly ok: true }): Edited {
  const { axes } = edited.file;
  const wrong = findImpossibleWood(axes, parentsFirst(axes));
  return wrong === null ? edited : refuse(wrong.reason);
}

function drawNew(file: TreeFile, { parentId, atM, plane }: Start, path: Path): Edited {
  const parent = axisOf(file, parentId);
  const course = asPath(offsetsFrom(file, plane.through, path));
  const { lengthM, bearingDeg, fromUprightDeg } = branchFigures({ path: course });
  const guess = firstGuess(file, parent);
  const baseDiameterM = thicknessOnM(file, parent, guess.kind, lengthM, atM);
  const added = add(file, {
    ...guess,
    atM,
    lengthM,
    bearingDeg,
    fromUprightDeg,
    baseDiameterM,
    tipDiameterM: baseDiameterM / 2,
    leafCount: guess.kind === 'shoot' ? Math.min(mostLeaves, Math.ceil(lengthM / internodeM)) : 0,
  });
  if (!added.ok) return added;
  const drawn = added.file.axes[added.file.axes.length - 1] as TreeFile['axes'][number];
  return {
    ...added,
    file: withAxes(added.file, [{ ...drawn, path: course }]),
    said: `Drew ${drawn.name}`,
  };
}

function drawTrunkOn(file: TreeFile, { parentId, atM, plane }: Start, path: Path): Edited {
  const trunk = axisOf(file, parentId);
  const stub = pathUpTo(trunk.path, atM);
  const end = stub[stub.length - 1] as Vec3;
  const onward = offsetsFrom(file, plane.through, path).slice(1);
  const course = [...stub, ...onward.map((offset) => add3(end, offset))];
  const complaint = outside('lengthM', pathLengthM(course));
  if (complaint !== null) return refuse(complaint);
  return {
    ok: true,
    file: withAxes(file, [{ ...trunk, path: asPath(course) }]),
    said: `Drew ${trunk.name} on`,
    select: trunk.id,
  };
}
