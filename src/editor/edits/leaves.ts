/** Leaves: how many by count or by growth, how large by the midrib. An estimate never changes what was measured. */
import type { TreeFile } from '../../document/treeFile.ts';
import { pathLengthM } from '../../geometry/path.ts';
import { type Foliage, midribSource } from '../../geometry/tree.ts';
import { leavesOfLength, midribOfShootM } from '../../growth/leavesOfLength.ts';
import { heatClock } from '../../season/heat.ts';
import type { IsoDate } from '../../season/site.ts';
import { figValues } from '../../species/fig.ts';
import { axisOf, type Edited, refuse, type TreeAxis, withAxes } from '../edit.ts';
import { outside } from '../limits.ts';
import { changeSetting } from './setting.ts';

type Source = Foliage['source'];
type Leaves = NonNullable<TreeAxis['foliage']>;

/** Leaves with their sources; that of the midrib is written only where it is another than that of the count. */
export const leavesOf = (count: number, source: Source, midribM: number, midribFrom: Source): Leaves =>
  source === midribFrom ? { count, midribM, source } : { count, midribM, source, midribSource: midribFrom };

const onlyLeafy = (axis: TreeAxis): Edited => refuse(`${axis.name} has no leaves. Give their number first.`);

/** Says where the count or the midrib of a shoot is from: what is held as an estimate may be estimated anew. */
export function sayLeavesFrom(file: TreeFile, id: string, what: 'count' | 'midrib', source: Source): Edited {
  const axis = axisOf(file, id);
  const { foliage } = axis;
  if (foliage === null) return onlyLeafy(axis);
  const sources = { count: foliage.source, midrib: midribSource(foliage), [what]: source };
  const next = leavesOf(foliage.count, sources.count, foliage.midribM, sources.midrib);
  return changed(file, [{ ...axis, foliage: next }], `Changed the leaves of ${axis.name}`);
}

/** The midrib of a full-grown leaf in the middle of this shoot, as measured on it. */
export function measureMidrib(file: TreeFile, id: string, midribM: number): Edited {
  const complaint = outside('midribM', midribM);
  if (complaint !== null) return refuse(complaint);
  const axis = axisOf(file, id);
  if (axis.foliage === null) return onlyLeafy(axis);
  const { count, source } = axis.foliage;
  const foliage = leavesOf(count, source, midribM, 'measured');
  return changed(file, [{ ...axis, foliage }], `Measured a leaf of ${axis.name}`);
}

/**
 * The midrib as measured on the tree, or null for the species' own: what the leaves to come grow to, and those that stand where
 * no midrib was measured on their shoot.
 */
export function measureTreeMidrib(file: TreeFile, midribM: number | null): Edited {
  // Twelfths of an inch and the like are no settings: whole micrometres.
  const cm = midribM === null ? null : Math.round(midribM * 1e6) / 1e4;
  const set = changeSetting(file, 'leafMidribCm', cm);
  if (!set.ok) return set;
  const values = figValues(set.file.settings);
  const sized = set.file.axes.flatMap((axis) => {
    const { foliage } = axis;
    if (foliage === null || foliage.count === 0 || midribSource(foliage) === 'measured') return [];
    const m = midribOfShootM(pathLengthM(axis.path), foliage.count, values);
    return [{ ...axis, foliage: leavesOf(foliage.count, foliage.source, tenthMm(m), 'estimated') }];
  });
  return changed(set.file, sized, 'Measured the leaves of the tree');
}

/** Shoots whose leaves stand in the file as an estimate. */
export const estimatedShoots = (file: TreeFile): readonly string[] =>
  file.axes.filter(({ foliage }) => foliage?.source === 'estimated').map(({ id }) => id);

/**
 * Estimates how many leaves these branches carry from their length. Those that were counted, dead wood and the trunk are
 * left as they are. Refused for a day on which no leaf is out.
 * @param on the day on which they have this length; null when they have done growing
 */
export function estimateLeaves(file: TreeFile, ids: readonly string[], on: IsoDate | null): Edited {
  const values = figValues(file.settings);
  const heatGdd8 =
    on === null ? Infinity : heatClock(file.site.climate, file.season.budBreakOn, values).sumAt(on);
  if (heatGdd8 < values.leafOutHeatGdd8)
    return refuse('On that day no leaf has unfolded yet. Choose a later day, or leave the buds closed.');
  const wanted = ids
    .map((id) => axisOf(file, id))
    .filter(
      ({ foliage, condition, parentId }) =>
        foliage?.source !== 'measured' && condition !== 'dead' && parentId !== null,
    );
  if (wanted.length === 0)
    return refuse(
      'There is nothing to estimate: the leaves of these branches were counted, or they bear none.',
    );
  const estimated = wanted.map((axis): TreeAxis => {
    const lengthM = pathLengthM(axis.path);
    const count = Math.min(200, leavesOfLength(lengthM, heatGdd8, values));
    const { foliage } = axis;
    return {
      ...axis,
      foliage:
        foliage !== null && midribSource(foliage) === 'measured'
          ? leavesOf(count, 'estimated', foliage.midribM, 'measured')
          : leavesOf(count, 'estimated', tenthMm(midribOfShootM(lengthM, count, values)), 'estimated'),
    };
  });
  const shoots = wanted.length === 1 ? '1 shoot' : `${wanted.length} shoots`;
  return changed(file, estimated, `Estimated the leaves of ${shoots}`);
}

const tenthMm = (m: number): number => Math.round(m * 1e4) / 1e4;

const changed = (file: TreeFile, axes: readonly TreeAxis[], said: string): Edited => ({
  ok: true,
  file: withAxes(file, axes),
  said,
});
