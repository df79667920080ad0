/** What to do: the cut list, what it brings, and doing nothing beside it. */
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { DateField } from '../../fields/DateField.tsx';
import { Progress } from '../../frame/Progress.tsx';
import { useFile, useView, useWorkbench } from '../../state/workbench.ts';
import { Cautions } from './Cautions.tsx';
import { CutList } from './CutList.tsx';
import { ScoreTable } from './ScoreTable.tsx';
import { workWords as words } from './words.ts';

export function WorkSheet() {
  const { plan: work, view } = useWorkbench();
  const file = useFile();
  const { workDate } = useView();
  const { plan, file: plannedFile, trial, isTrying } = useStore(work.store);
  const date = workDate ?? file.season.sketchedOn;
  useEffect(() => {
    const { file: made, plan: old, progress } = work.store.getState();
    if (made !== file || (old !== null && old.date !== date) || (old === null && progress === null)) {
      work.make(file, date);
    }
  }, [work, file, date]);
  const isStale = plan !== null && (plannedFile !== file || plan.date !== date);
  return (
    <>
      <Headline isStale={isStale} />
      <State isStale={isStale} date={date} />
      <div className="is-inline">
        <DateField
          label={words.date}
          value={date}
          onChoose={(chosen) => view.setState({ workDate: chosen })}
        />
      </div>
      {plan === null ? null : (
        <>
          <ScoreTable
            score={plan.score}
            ticked={trial?.score ?? null}
            isSettling={isTrying}
            isStale={isStale}
          />
          <Remarks remarks={plan.remarks} />
          {plan.cuts.length === 0 ? null : <Cautions cuts={plan.cuts} />}
          {plan.cuts.length === 0 ? null : <CutList cuts={plan.cuts} isStale={isStale} />}
        </>
      )}
    </>
  );
}

function Headline({ isStale }: { readonly isStale: boolean }) {
  const { plan: work } = useWorkbench();
  const { plan, ticked, trial, progress } = useStore(work.store);
  const text =
    plan === null || isStale
      ? progress === null
        ? words.notPlanned
        : words.planning
      : plan.cuts.length === 0
        ? words.headlineNone
        : words.headline(
            ticked.size,
            (trial?.score ?? plan.score.plan).ripeFigs,
            plan.score.doNothing.ripeFigs,
          );
  return (
    <p className="headline" data-testid="work-headline" role="status">
      {text}
    </p>
  );
}

function State({ isStale, date }: { readonly isStale: boolean; readonly date: string }) {
  const { plan: work } = useWorkbench();
  const file = useFile();
  const { progress, stopped } = useStore(work.store);
  return (
    <div className="state">
      <p role="status" className={isStale ? 'state-words is-stale' : 'state-words'}>
        {isStale ? (progress === null ? words.staleStopped : words.stale) : null}
        {!isStale && stopped?.why === 'cancelled' ? words.cancelled : null}
      </p>
      <Progress step={progress} onCancel={work.cancel} />
      {stopped?.why === 'failed' ? (
        <p role="alert" className="is-wrong">
          {words.failed(stopped.message)}
        </p>
      ) : null}
      {stopped === null ? null : (
        <button type="button" className="button" onClick={() => work.make(file, date)}>
          {words.again}
        </button>
      )}
    </div>
  );
}

function Remarks({ remarks }: { readonly remarks: readonly string[] }) {
  if (remarks.length === 0) return null;
  return (
    <section>
      <h2 className="small-head">{words.remarks}</h2>
      <ul className="plain-list">
        {remarks.map((remark) => (
          <li key={remark}>{remark}</li>
        ))}
      </ul>
    </section>
  );
}
