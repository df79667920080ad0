/** The day of the work and how boldly to cut, folded to one line that names both. */
import { DateField } from '../../fields/DateField.tsx';
import { shortDay } from '../../fields/dates.ts';
import { useWorkbench } from '../../state/workbench.ts';
import { ChoiceSection } from './ChoiceSection.tsx';
import type { ShownPlan } from './usePlan.ts';
import { workWords as words } from './words.ts';

export function PlanSettings({ shown }: { readonly shown: ShownPlan }) {
  const { view } = useWorkbench();
  const { wanted, plan } = shown;
  return (
    <details>
      <summary>{words.settings(shortDay(wanted.date), wanted.boldness)}</summary>
      <div className="is-inline">
        <DateField
          label={words.date}
          value={wanted.date}
          onChoose={(workDate) => view.setState({ workDate })}
        />
      </div>
      {plan === null ? null : <ChoiceSection points={plan.choice} />}
    </details>
  );
}
