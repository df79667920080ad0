/** Many branches at once: marked, deleted, thinned. */
import type { TreeFile } from '../../document/treeFile.ts';
import { withDescendants } from '../../geometry/tree.ts';
import { axisOf, type Edited, refuse, type TreeAxis, withAxes } from '../edit.ts';

export interface Mark {
  readonly condition?: TreeAxis['condition'];
  /** What the plan must do with them, or null for its free choice. */
  readonly pin?: TreeAxis['pin'];
  /** Whether they carried figs on the day of the sketch. */
  readonly bearsFigs?: boolean;
}

const counted = (n: number): string => (n === 1 ? '1 branch' : `${n} branches`);

/** Marks these branches, each alone: what grows on them is not marked with them. */
export function markMany(file: TreeFile, ids: readonly string[], mark: Mark): Edited {
  if (ids.length === 0) return refuse('Nothing is ticked. Tick the branches to be marked first.');
  if (mark.pin === 'remove' && ids.some((id) => axisOf(file, id).parentId === null))
    return refuse('The trunk cannot be marked to go: no plan fells a tree. Take its tick away.');
  const marked = ids.map((id) => ({ ...axisOf(file, id), ...mark }));
  return { ok: true, file: withAxes(file, marked), said: `Marked ${counted(ids.length)}` };
}

/** Deletes these branches and all that grows on them. */
export function removeMany(file: TreeFile, ids: readonly string[]): Edited {
  if (ids.length === 0) return refuse('Nothing is ticked. Tick the branches to be deleted first.');
  if (ids.some((id) => axisOf(file, id).parentId === null))
    return refuse('The trunk holds the whole tree and cannot be deleted. Take its tick away.');
  const going = new Set(ids.flatMap((id) => withDescendants({ axes: file.axes }, id)));
  const axes = file.axes.filter((axis) => !going.has(axis.id));
  return { ok: true, file: { ...file, axes }, said: `Deleted ${counted(going.size)}` };
}

/**
 * Takes away every second shoot on a branch and on each lateral it carries, counted from the base of each; where
 * there is no shoot, every second bud. The first of each stays, and what is marked to be kept.
 */
export function thinEverySecond(file: TreeFile, id: string): Edited {
  const { name } = axisOf(file, id);
  const within = new Set(withDescendants({ axes: file.axes }, id));
  const wood = file.axes.filter((axis) => within.has(axis.id) && axis.kind !== 'shoot');
  const going = new Set(
    wood.flatMap((on) =>
      everySecond(file.axes.filter((axis) => axis.parentId === on.id && axis.kind === 'shoot')),
    ),
  );
  if (going.size > 0) {
    const gone = new Set([...going].flatMap((one) => withDescendants({ axes: file.axes }, one)));
    const axes = file.axes.filter((axis) => !gone.has(axis.id));
    return { ok: true, file: { ...file, axes }, said: `Took every second shoot off ${name}` };
  }
  const changed = file.axes
    .filter((axis) => within.has(axis.id))
    .map((axis) => {
      const off = new Set(everySecond(axis.buds));
      return { ...axis, buds: axis.buds.filter((bud) => !off.has(bud.id)) };
    })
    .filter((axis) => axis.buds.length < axisOf(file, axis.id).buds.length);
  if (changed.length === 0) return refuse(`No two shoots or buds stand on one branch of ${name}.`);
  return { ok: true, file: withAxes(file, changed), said: `Rubbed every second bud off ${name}` };
}

/** Ids of the second, fourth and so on from the base, but for those to be kept. */
function everySecond(
  growth: readonly { readonly id: string; readonly atM: number; readonly pin: TreeAxis['pin'] }[],
): string[] {
  return growth
    .toSorted((a, b) => a.atM - b.atM)
    .filter(({ pin }, i) => i % 2 === 1 && pin !== 'keep')
    .map(({ id }) => id);
}
