/** What to do: what it is worth, the cut list, and all that stands behind it, folded. */
import type { Plan } from '../../../plan/plan.ts';
import { useFile } from '../../state/workbench.ts';
import { AmountSection } from './AmountSection.tsx';
import { Cautions } from './Cautions.tsx';
import { CutList } from './CutList.tsx';
import { Outputs } from './Outputs.tsx';
import { PinchSection } from './PinchSection.tsx';
import { PinList } from './PinList.tsx';
import { PlanSettings } from './PlanSettings.tsx';
import { PaperSheet } from './paper/PaperSheet.tsx';
import { Remarks } from './Remarks.tsx';
import { RenewalSection } from './RenewalSection.tsx';
import { ScoreTable } from './ScoreTable.tsx';
import { StaysSection } from './StaysSection.tsx';
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
        <PinList />
        {plan === null ? null : <Remarks remarks={plan.remarks} />}
      </div>
      {plan === null ? null : <Work plan={plan} shown={shown} />}
    </>
  );
}

function Work({ plan, shown }: { readonly plan: Plan; readonly shown: ShownPlan }) {
  const file = useFile();
  const { isStale, trial, isTrying } = shown;
  return (
    <>
      {plan.cuts.length + plan.yourCall.length === 0 ? null : (
        <>
          <Cautions cuts={[...plan.cuts, ...plan.yourCall]} />
          <CutList plan={plan} isStale={isStale} />
        </>
      )}
      <div className="folds">
        <StaysSection trial={isStale ? null : trial} />
        <PinchSection pinch={plan.pinch} />
        <AmountSection plan={plan} shown={shown} />
        <RenewalSection shown={shown} />
        <ScoreTable
          score={plan.score}
          ticked={trial?.score ?? null}
          isSettling={isTrying}
          isStale={isStale}
        />
      </div>
      <Outputs plan={plan} shown={shown} />
      {isStale ? null : <PaperSheet plan={plan} shown={shown} file={file} />}
    </>
  );
}
