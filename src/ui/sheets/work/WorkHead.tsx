/** What the ticked cuts are worth against doing nothing, and how far the work on the list is. */

import { figsLostBy } from '../../../plan/fewerFigs.ts';
import { Progress } from '../../frame/Progress.tsx';
import { useWorkbench } from '../../state/workbench.ts';
import type { ShownPlan } from './usePlan.ts';
import { workWords as words } from './words.ts';

export function WorkHead({ shown }: { readonly shown: ShownPlan }) {
  return (
    <>
      <Headline shown={shown} />
      <State shown={shown} />
    </>
  );
}

function Headline({ shown }: { readonly shown: ShownPlan }) {
  const { plan, ticked, trial, progress, isStale } = shown;
  if (plan === null || (isStale && progress === null)) {
    return (
      <p className="headline" data-testid="work-headline" role="status">
        {progress === null ? words.notPlanned : words.planning}
      </p>
    );
  }
  const { doNothing } = plan.score;
  const range = plan.confidence === null ? null : words.range(plan.confidence);
  const calls = plan.yourCall.length === 0 ? null : words.calls(plan.yourCall.length);
  const ripe = (trial?.score ?? plan.score.plan).ripeFigs;
  return (
    <div className={isStale ? 'work-head is-stale' : 'work-head'} role="status">
      <p className="headline" data-testid="work-headline">
        {plan.cuts.length === 0 ? words.headlineNone : words.headline(ticked.size, ripe, doNothing.ripeFigs)}
      </p>
      {plan.cuts.length === 0 ? null : (
        <p className="small quiet">
          {words.headlineBy(ticked.size, ripe - doNothing.ripeFigs, figsLostBy(plan.steps))} {range} {calls}
        </p>
      )}
    </div>
  );
}

/** The list takes long enough to say so at once. */
const showAfterMs = 100;

function State({ shown }: { readonly shown: ShownPlan }) {
  const { plan: work } = useWorkbench();
  const { progress, stopped, isStale, isApproximate, isFirst, again } = shown;
  return (
    <div className="state">
      <p role="status" data-testid="work-state" className={isStale ? 'state-words is-stale' : 'state-words'}>
        {isStale ? (progress === null ? words.staleStopped : words.stale) : null}
        {!isStale && isApproximate ? words.approximate : null}
        {!isStale && isFirst ? (progress === null ? words.firstStopped : words.first) : null}
        {!isStale && stopped?.why === 'cancelled' ? ` ${words.cancelled}` : null}
      </p>
      <Progress step={progress} onCancel={work.cancel} afterMs={showAfterMs} />
      {stopped?.why === 'failed' ? (
        <p role="alert" className="is-wrong">
          {words.failed(stopped.message)}
        </p>
      ) : null}
      {stopped === null ? null : (
        <button type="button" className="button" onClick={again}>
          {words.again}
        </button>
      )}
    </div>
  );
}
