/** What goes with a cut. */
import { type Tree, withDescendants } from '../geometry/tree.ts';
import type { Finding } from './finding.ts';

/** Axes that go with a cut, whole or in part; those that fork off below it stay. */
export function idsBeyond(tree: Tree, cut: Pick<Finding, 'target' | 'atM'>): Set<string> {
  const ids = new Set<string>([cut.target]);
  for (const axis of tree.axes) {
    const isBeyond = axis.parentId === cut.target && (cut.atM === 0 || axis.atM > cut.atM);
    if (!isBeyond) continue;
    for (const id of withDescendants(tree, axis.id)) ids.add(id);
  }
  return ids;
}
