/** What to do: what it is worth, the cut list, and all that stands behind it, folded. */
import type { Plan } from '../../../plan/plan.ts';
import { Cautions } from './Cautions.tsx';
import { CutList } from './CutList.tsx';
import { PlanSettings } from './PlanSettings.tsx';
import { Remarks } from './Remarks.tsx';
import { ScoreTable } from './ScoreTable.tsx';
import { type ShownPlan, usePlan } from './usePlan.ts';
import { WorkHead } from './WorkHead.tsx';

export function WorkSheet() {
  const shown = usePlan();
  const { plan } = shown;
  return (
    <>
      <WorkHead shown={shown} />
      <div className="folds is-row">
        <PlanSettings shown={shown} />
        {plan === null ? null : <Remarks remarks={plan.remarks} />}
      </div>
      {plan === null ? null : <Work plan={plan} shown={shown} />}
    </>
  );
}

function Work({ plan, shown }: { readonly plan: Plan; readonly shown: ShownPlan }) {
  const { isStale, trial, isTrying } = shown;
  return (
    <>
      {plan.cuts.length === 0 ? null : (
        <>
          <Cautions cuts={plan.cuts} />
          <CutList plan={plan} isStale={isStale} />
        </>
      )}
      <div className="folds">
        <ScoreTable
          score={plan.score}
          ticked={trial?.score ?? null}
          isSettling={isTrying}
          isStale={isStale}
        />
      </div>
    </>
  );
}
