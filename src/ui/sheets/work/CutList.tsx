/** The cuts in order of work: by step, within it by the branch one goes to. */
import { useStore } from 'zustand';
import { formatDecimal } from '../../../geometry/measure.ts';
import { stepTitle } from '../../../plan/briefWords.ts';
import type { Plan } from '../../../plan/plan.ts';
import { useSelected, useWorkbench } from '../../state/workbench.ts';
import { CutRow, whenOf } from './CutRow.tsx';
import { type CutGroup, groupCuts } from './groups.ts';
import { workWords as words } from './words.ts';

interface CutListProps {
  readonly plan: Plan;
  readonly isStale: boolean;
}

export function CutList({ plan, isStale }: CutListProps) {
  const { plan: work } = useWorkbench();
  const { ticked, isTrying } = useStore(work.store);
  const ids = plan.cuts.map((cut) => cut.id);
  return (
    <section className={isStale ? 'cut-list is-stale' : 'cut-list'} aria-label={words.list}>
      <div className="table-head">
        <h2 className="small-head">{words.cuts(ids.length)}</h2>
        <span role="status" className="quiet small">
          {isTrying ? words.scoring : ''}
        </span>
        <button
          type="button"
          className="button is-small"
          disabled={isStale}
          onClick={() => work.tick(ids, ticked.size === 0)}
        >
          {ticked.size === 0 ? words.tickAll : words.untickAll}
        </button>
      </div>
      {groupCuts(plan).map((group, i) => (
        <Group key={`${group.step} ${i}`} group={group} ticked={ticked} isStale={isStale} />
      ))}
    </section>
  );
}

interface GroupProps {
  readonly group: CutGroup;
  readonly ticked: ReadonlySet<string>;
  readonly isStale: boolean;
}

function Group({ group, ticked, isStale }: GroupProps) {
  const selectedId = useSelected();
  const { after, runs } = group;
  const cuts = runs.flatMap((run) => run.cuts.map(({ cut }) => cut));
  const isSameTime = new Set(cuts.map(whenOf)).size === 1;
  const [first] = cuts;
  return (
    <section className="cut-group">
      <div className="table-head">
        <h3 className="step-name">{first === undefined ? '' : stepTitle(first)}</h3>
        {isSameTime && first !== undefined ? <span className="cut-foot">{whenOf(first)}</span> : null}
      </div>
      {runs.map((run) => (
        <div key={run.cuts[0]?.cut.id}>
          <h4 className="branch-head">{run.branch}</h4>
          <ol className="cuts">
            {run.cuts.map(({ cut, n }) => (
              <CutRow
                key={cut.id}
                cut={cut}
                n={n}
                isTicked={ticked.has(cut.id)}
                isOpen={selectedId === cut.target}
                isStale={isStale}
                isDateShown={!isSameTime}
              />
            ))}
          </ol>
        </div>
      ))}
      {after === null ? null : (
        <p className="after-step">
          {words.afterStep(formatDecimal(after.ripeFigs, 0), `${formatDecimal(100 * after.meanLight, 0)} %`)}
        </p>
      )}
    </section>
  );
}
