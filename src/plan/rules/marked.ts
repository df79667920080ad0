/** What the grower marked to go, goes. */
import type { Finding } from '../finding.ts';
import type { RuleContext } from '../ruleContext.ts';

export function marked(context: RuleContext): Finding[] {
  const reason = { rule: 'pinned' } as const;
  const isCut = true;
  return context.tree.axes.flatMap((axis): Finding[] => {
    const buds = axis.buds.filter((bud) => bud.pin === 'remove');
    const rubbed = buds.map(
      (bud) => ({ kind: 'rub off bud', target: bud.id, atM: 0, reason, isCut }) as const,
    );
    if (axis.pin !== 'remove') return rubbed;
    return [{ kind: 'remove', target: axis.id, atM: 0, reason, isCut: axis.parentId !== null }, ...rubbed];
  });
}
