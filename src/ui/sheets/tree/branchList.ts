/** The branches in the order in which one walks the tree: each followed by what grows on it, from the base up. */
import type { TreeFile } from '../../../document/treeFile.ts';
import type { TreeAxis } from '../../../editor/edit.ts';

export interface ListedBranch {
  readonly axis: TreeAxis;
  /** 0 for the trunk. */
  readonly depth: number;
}

export function listBranches(file: TreeFile): ListedBranch[] {
  const childrenOf = new Map<string | null, TreeAxis[]>();
  for (const axis of file.axes) {
    const siblings = childrenOf.get(axis.parentId);
    if (siblings === undefined) childrenOf.set(axis.parentId, [axis]);
    else siblings.push(axis);
  }
  const listed: ListedBranch[] = [];
  const waiting: ListedBranch[] = (childrenOf.get(null) ?? []).map((axis) => ({ axis, depth: 0 }));
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    listed.push(next);
    const { depth } = next;
    const children = [...(childrenOf.get(next.axis.id) ?? [])].sort((a, b) => b.atM - a.atM);
    waiting.push(...children.map((axis) => ({ axis, depth: depth + 1 })));
  }
  return listed;
}
