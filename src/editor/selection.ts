/** Walking the tree from branch to branch, and what stays selected when the tree changes. */
import type { TreeFile } from '../document/treeFile.ts';

/** Ids that can be selected: branches and buds. */
export function isThere(file: TreeFile, id: string): boolean {
  return file.axes.some((axis) => axis.id === id || axis.buds.some((bud) => bud.id === id));
}

/** The branch that an id means: the branch itself, or the one that carries the bud. Null when it is gone. */
export function branchOf(file: TreeFile, id: string | null): string | null {
  if (id === null) return null;
  return file.axes.find((axis) => axis.id === id || axis.buds.some((bud) => bud.id === id))?.id ?? null;
}

export type Way = 'parent' | 'child' | 'next' | 'previous';

/** The branch one step that way; the same when there is none. From nothing, the trunk. */
export function stepTo(file: TreeFile, id: string | null, way: Way): string | null {
  const at = branchOf(file, id);
  const axis = file.axes.find((a) => a.id === at);
  if (axis === undefined) return file.axes[0]?.id ?? null;
  if (way === 'parent') return axis.parentId ?? axis.id;
  const children = file.axes.filter((a) => a.parentId === axis.id).sort((a, b) => a.atM - b.atM);
  if (way === 'child') return children[0]?.id ?? axis.id;
  const siblings = file.axes.filter((a) => a.parentId === axis.parentId).sort((a, b) => a.atM - b.atM);
  const place = siblings.findIndex((a) => a.id === axis.id) + (way === 'next' ? 1 : -1);
  return siblings[(place + siblings.length) % siblings.length]?.id ?? axis.id;
}
