/** Dead, diseased and damaged wood goes first, back to where sound wood begins (Oregon State University Extension 2012, Pruning basics). */
import { type PlacedAxis, radiusAtM, withDescendants } from '../../geometry/tree.ts';
import type { Finding } from '../finding.ts';
import type { RuleContext } from '../ruleContext.ts';

/**
 * One cut for a whole sick branch, at its fork. Dead wood that still carries live branches is taken back to
 * just beyond the last of them. A sick trunk is told, never cut.
 */
export function sickWood(context: RuleContext): Finding[] {
  const findings: Finding[] = [];
  for (const placed of context.placed.values()) {
    const { condition, id } = placed.axis;
    if (condition === 'live' || placed.parent?.axis.condition === condition) continue;
    const reason = { rule: condition } as const;
    if (placed.parent === null) {
      findings.push({ kind: 'remove', target: id, atM: 0, reason, isCut: false });
      continue;
    }
    const atM = condition === 'dead' ? beyondLastLiveBranchM(context, placed) : 0;
    if (atM < placed.lengthM) findings.push({ kind: 'remove', target: id, atM, reason, isCut: true });
  }
  return findings;
}

/** Where dead wood ends to carry anything alive: past the base of the last branch with live wood on it; 0 for none. */
function beyondLastLiveBranchM(context: RuleContext, dead: PlacedAxis): number {
  let atM = 0;
  for (const child of context.childrenOf(dead.axis.id)) {
    const alive = withDescendants(context.tree, child.axis.id).some(
      (id) => context.placed.get(id)?.axis.condition === 'live',
    );
    if (alive) atM = Math.max(atM, child.axis.atM + 2 * radiusAtM(dead, child.axis.atM));
  }
  return atM;
}
