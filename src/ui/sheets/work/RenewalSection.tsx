/** Ways to renew an old tree, worked out when they are asked for. */
import type { RenewalWay } from '../../../plan/renewal.ts';
import { renewalCutText, renewalTitle, renewalYearText } from '../../../plan/renewalWords.ts';
import { Progress } from '../../frame/Progress.tsx';
import { useFile, useUnits, useWorkbench } from '../../state/workbench.ts';
import { seasonWords as words } from './seasonWords.ts';
import type { ShownPlan } from './usePlan.ts';

export function RenewalSection({ shown }: { readonly shown: ShownPlan }) {
  const { view, plan: work } = useWorkbench();
  const ways = shown.plan?.renewal;
  return (
    <details>
      <summary>{words.renewal}</summary>
      {ways !== undefined ? (
        <Ways ways={ways} />
      ) : shown.wanted.renewal && shown.progress !== null ? (
        <div role="status">
          <p>{words.renewalUnderWay}</p>
          <Progress step={shown.progress} onCancel={work.cancel} />
        </div>
      ) : (
        <button
          type="button"
          className="button"
          onClick={() => (shown.wanted.renewal ? shown.again() : view.setState({ wantsRenewal: true }))}
        >
          {words.renewalAsk}
        </button>
      )}
    </details>
  );
}

function Ways({ ways }: { readonly ways: readonly RenewalWay[] }) {
  if (ways.length === 0) return <p>{words.renewalNone}</p>;
  return ways.map((way) => (
    <section key={way.way} className="renewal-way">
      <p>{renewalTitle(way)}</p>
      <ol className="renewal-years">
        {way.years.map((year) => (
          <Year key={year.year} year={year} />
        ))}
      </ol>
    </section>
  ));
}

function Year({ year }: { readonly year: RenewalWay['years'][number] }) {
  const units = useUnits();
  const { site } = useFile();
  return (
    <li>
      <strong>{renewalYearText(year)}</strong>
      {year.cuts.length === 0 ? (
        <p className="quiet small">{words.wait}</p>
      ) : (
        <ul className="plain-list">
          {year.cuts.map((cut) => (
            <li key={cut.target}>{renewalCutText(cut, units, site.viewpoint)}</li>
          ))}
        </ul>
      )}
    </li>
  );
}
