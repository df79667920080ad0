/** How much the ticked cuts take of the tree, against what a year may take. */
import { useMemo } from 'react';
import { stanceOf, treeOf } from '../../../document/views.ts';
import { formatArea } from '../../../geometry/measure.ts';
import type { Plan } from '../../../plan/plan.ts';
import { ruleContext } from '../../../plan/ruleContext.ts';
import { bearingShare, cutAreaShare, limitsOfForm } from '../../../plan/yearlyLimit.ts';
import { figValues } from '../../../species/fig.ts';
import { useFile, useUnits } from '../../state/workbench.ts';
import { seasonWords as words } from './seasonWords.ts';
import type { ShownPlan } from './usePlan.ts';

export function AmountSection({ plan, shown }: { readonly plan: Plan; readonly shown: ShownPlan }) {
  const units = useUnits();
  const file = useFile();
  const { ticked, trial } = shown;
  const { taken, wounds, values } = useMemo(() => {
    const cuts = [...plan.cuts, ...plan.yourCall].filter(({ id }) => ticked.has(id));
    const limits = limitsOfForm(figValues(file.settings));
    const tree = treeOf(file);
    return {
      taken: bearingShare(tree, cuts),
      wounds: cutAreaShare(ruleContext(tree, stanceOf(file), limits), cuts),
      values: limits,
    };
  }, [plan, ticked, file]);
  const { removedShareWarnFraction: warn, removedShareStopFraction: stop, cutAreaWarnFraction } = values;
  const isByDesign = !Number.isFinite(cutAreaWarnFraction);
  const leafM2 = (trial?.score ?? plan.score.plan).leafAreaM2;
  const rows: readonly (readonly [string, string, boolean])[] = [
    [
      words.shareTitle,
      isByDesign ? words.shareByDesign(taken) : words.share(taken, warn, stop),
      taken > warn,
    ],
    [
      words.woundsTitle,
      isByDesign ? words.woundsByDesign(wounds) : words.wounds(wounds, cutAreaWarnFraction),
      wounds > cutAreaWarnFraction,
    ],
    [
      words.leafTitle,
      `${formatArea(leafM2, units)} (${formatArea(plan.score.doNothing.leafAreaM2, units)})`,
      false,
    ],
  ];
  return (
    <details>
      <summary>{words.amount}</summary>
      {taken === 0 && wounds === 0 ? <p>{words.amountNone}</p> : null}
      <dl className="amounts">
        {rows.map(([name, text, isMuch]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className={isMuch ? 'is-wrong' : ''}>{text}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
