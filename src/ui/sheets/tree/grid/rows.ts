/** The rows of the table of branches: every branch, each followed by its buds and by what grows on it. */
import type { TreeFile } from '../../../../document/treeFile.ts';
import type { TreeAxis } from '../../../../editor/edit.ts';
import { listBranches } from '../branchList.ts';

export interface GridRow {
  readonly id: string;
  /** The branch, or the one that carries the bud. */
  readonly axis: TreeAxis;
  readonly bud: TreeAxis['buds'][number] | null;
  /** 1 for the trunk. */
  readonly level: number;
}

/** The row of a branch or bud alone, at no level; null when there is none of that id. */
export function rowOf(file: TreeFile, id: string): GridRow | null {
  for (const axis of file.axes) {
    if (axis.id === id) return { id, axis, bud: null, level: 1 };
    const bud = axis.buds.find((one) => one.id === id);
    if (bud !== undefined) return { id, axis, bud, level: 2 };
  }
  return null;
}

export function gridRows(file: TreeFile, withBuds: boolean): GridRow[] {
  return listBranches(file).flatMap(({ axis, depth }): GridRow[] => [
    { id: axis.id, axis, bud: null, level: depth + 1 },
    ...(withBuds ? axis.buds : []).map((bud) => ({ id: bud.id, axis, bud, level: depth + 2 })),
  ]);
}
