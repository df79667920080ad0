/** A branch bent by hand: one place of its course is moved, and the wood to both sides of it follows. */
import type { TreeFile } from '../../document/treeFile.ts';
import { type Path, pathLengthM, pointAt } from '../../geometry/path.ts';
import { add, distance, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { type Edited, refuse, type TreeAxis } from '../edit.ts';
import { reshape } from '../edits/reshape.ts';
import { outside } from '../limits.ts';
import type { Held } from './held.ts';
import { bent } from './rewood.ts';
import { pointOnPlane, type Sight } from './sight.ts';

/** A course of many points is bent at these shares of its length: our choice. */
const usualShares = [0.25, 0.5, 0.75];
/** A bend no nearer to the ends, as a share of the length: there are the handles of base and tip. */
const nearEnds = 0.04;

/** Distances along a path of its points. */
function alongs(path: Path): number[] {
  let atM = 0;
  return path.map((point, i) => {
    if (i > 0) atM += distance(path[i - 1] as Vec3, point);
    return atM;
  });
}

/** Where a branch can be taken to bend it, metres along it: its inner points, at most three; the middle of a straight one. */
export function bendsOf(path: Path): readonly number[] {
  const lengthM = pathLengthM(path);
  const inner = alongs(path).filter((atM) => atM > nearEnds * lengthM && atM < (1 - nearEnds) * lengthM);
  if (inner.length === 0) return [lengthM / 2];
  if (inner.length <= usualShares.length) return inner;
  const nearest = usualShares.map((share) =>
    inner.reduce((best, atM) =>
      Math.abs(atM - share * lengthM) < Math.abs(best - share * lengthM) ? atM : best,
    ),
  );
  return [...new Set(nearest)];
}

/** The path with a point at that place, if it has none there. */
function withPoint(path: Path, atM: number): Path {
  const at = alongs(path);
  if (at.some((one) => Math.abs(one - atM) < 1e-9)) return path;
  const next = at.findIndex((one) => one > atM);
  return [...path.slice(0, next), pointAt(path, atM), ...path.slice(next)];
}

/** How much of the pull a place takes part in: all at the bend, less and less to the next handle on either side. */
function share(atM: number, bendM: number, fromM: number, toM: number): number {
  if (atM <= fromM || atM >= toM) return 0;
  return atM <= bendM ? (atM - fromM) / (bendM - fromM) : (toM - atM) / (toM - bendM);
}

/** @param nth of `bendsOf`, from 0 */
export function pullBend(
  file: TreeFile,
  axis: TreeAxis,
  base: Vec3,
  nth: number,
  sight: Sight,
  held: Held,
): Edited {
  const bends = bendsOf(axis.path);
  const bendM = bends[nth];
  if (bendM === undefined) throw new Error(`pullBend: ${axis.id} has ${bends.length} bends, got ${nth}`);
  const start = axis.path[0] as Vec3;
  const before = withPoint(axis.path, bendM);
  const place = add(base, sub(pointAt(axis.path, bendM), start));
  const met = pointOnPlane(sight, place, sight.facing);
  if (met === null) return refuse('The picture is too flat here. Turn it a little.');
  const by = sub(met, place);
  const [fromM, toM] = [bends[nth - 1] ?? 0, bends[nth + 1] ?? pathLengthM(axis.path)];
  const at = alongs(before);
  const after = before.map((point, i) => add(point, scale(by, share(at[i] as number, bendM, fromM, toM))));
  const complaint = outside('lengthM', pathLengthM(after));
  if (complaint !== null) return refuse(complaint);
  const next = bent(file, axis, before, after);
  const said = `Bent ${axis.name}`;
  if (!held.has('length')) return { ok: true, file: next, said };
  const sized = reshape(next, axis.id, { lengthM: pathLengthM(axis.path) });
  return sized.ok ? { ...sized, said } : sized;
}
