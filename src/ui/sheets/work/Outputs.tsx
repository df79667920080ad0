/** The list to take along: on paper, as a table, as days in a calendar. Of the cuts that are ticked. */
import { workCalendar } from '../../../document/workCalendar.ts';
import { workCsv } from '../../../document/workCsv.ts';
import type { Plan } from '../../../plan/plan.ts';
import { saveText } from '../../files/saveFile.ts';
import { useFile, useUnits, useWorkbench } from '../../state/workbench.ts';
import type { ShownPlan } from './usePlan.ts';
import { workWords as words } from './words.ts';

export function Outputs({ plan, shown }: { readonly plan: Plan; readonly shown: ShownPlan }) {
  const { editor } = useWorkbench();
  const units = useUnits();
  const file = useFile();
  const { ticked, isStale } = shown;
  const save = (text: string, ending: string, type: string) => {
    const name = saveText(text, `${file.id}-${plan.date}.${ending}`, type);
    editor.say({ kind: 'done', text: words.saved(name) });
  };
  const saveTable = () =>
    save(workCsv(plan, ticked, units, file.site.viewpoint), 'csv', 'text/csv;charset=utf-8');
  const saveDays = () => {
    const cuts = [...plan.cuts, ...plan.yourCall].filter(({ id }) => ticked.has(id));
    const text = workCalendar(cuts, plan.pinch, file, units, new Date().toISOString());
    save(text, 'ics', 'text/calendar;charset=utf-8');
  };
  const buttons = [
    [words.print, () => print()],
    [words.csv, saveTable],
    [words.calendar, saveDays],
  ] as const;
  return (
    <div className="button-row" role="group" aria-label={words.outputs}>
      {buttons.map(([text, run]) => (
        <button key={text} type="button" className="button" disabled={isStale} onClick={run}>
          {text}
        </button>
      ))}
    </div>
  );
}
