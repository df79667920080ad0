/** The cuts in order of work: by step, within it by the branch one goes to. */
import { useStore } from 'zustand';
import { formatDecimal } from '../../../geometry/measure.ts';
import { stepTitle } from '../../../plan/briefWords.ts';
import type { Plan } from '../../../plan/plan.ts';
import { yourCallText } from '../../../plan/worlds/standsWords.ts';
import { useSelected, useWorkbench } from '../../state/workbench.ts';
import { CutRow, whenOf } from './CutRow.tsx';
import { type CutGroup, groupCuts } from './groups.ts';
import { useKeptFocus } from './useKeptFocus.ts';
import { workWords as words } from './words.ts';

interface CutListProps {
  readonly plan: Plan;
  readonly isStale: boolean;
}

export function CutList({ plan, isStale }: CutListProps) {
  const { plan: work } = useWorkbench();
  const { ticked, isTrying } = useStore(work.store);
  const ids = plan.cuts.map((cut) => cut.id);
  const { head, list } = useKeptFocus(plan);
  return (
    <section className={isStale ? 'cut-list is-stale' : 'cut-list'} aria-label={words.list} {...list}>
      <div className="table-head">
        <h2 className="small-head" ref={head} tabIndex={-1}>
          {words.cuts(ids.length)}
        </h2>
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
      <YourCall plan={plan} ticked={ticked} isStale={isStale} />
    </section>
  );
}

interface TickedProps {
  readonly ticked: ReadonlySet<string>;
  readonly isStale: boolean;
}

function Group({ group, ...shown }: TickedProps & { readonly group: CutGroup }) {
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
      <Runs runs={runs} isDateShown={!isSameTime} {...shown} />
      {after === null ? null : (
        <p className="after-step">
          {words.afterStep(formatDecimal(after.ripeFigs, 0), `${formatDecimal(100 * after.meanLight, 0)} %`)}
        </p>
      )}
    </section>
  );
}

/** What is right in too few plausible trees and years to be advised: unticked until the grower ticks it. */
function YourCall({ plan, ...shown }: TickedProps & { readonly plan: Plan }) {
  const { yourCall, cuts, confidence, score } = plan;
  if (yourCall.length === 0) return null;
  const runs = groupCuts({ cuts: yourCall, steps: [] }, cuts.length + 1).flatMap((group) => group.runs);
  return (
    <section className="cut-group your-call">
      <h3 className="step-name">{words.yourCall}</h3>
      <p className="small">
        {confidence === null ? null : yourCallText(confidence)}{' '}
        {score.withYourCall === null ? null : words.withYourCall(score.withYourCall.ripeFigs)}
      </p>
      <Runs runs={runs} isDateShown {...shown} />
    </section>
  );
}

function Runs({ runs, ticked, ...row }: TickedProps & Pick<CutGroup, 'runs'> & { isDateShown: boolean }) {
  const selectedId = useSelected();
  return runs.map(({ branch, cuts }) => (
    <div key={cuts[0]?.cut.id}>
      <h4 className="branch-head">{branch}</h4>
      <ol className="cuts">
        {cuts.map(({ cut, n }) => (
          <CutRow
            key={cut.id}
            cut={cut}
            n={n}
            isTicked={ticked.has(cut.id)}
            isOpen={selectedId === cut.target}
            {...row}
          />
        ))}
      </ol>
    </div>
  ));
}
