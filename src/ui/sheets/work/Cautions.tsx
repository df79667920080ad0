/** What to mind: always in sight where work is proposed. */
import { cautionText } from '../../../plan/cautions.ts';
import type { CautionKey, Cut } from '../../../plan/cut.ts';
import { workWords as words } from './words.ts';

/** Shown for every list of work; the others where a cut calls for them. */
export const alwaysShown: readonly CautionKey[] = ['estimate', 'sap', 'tools'];

export function Cautions({ cuts }: { readonly cuts: readonly Cut[] }) {
  const called = new Set(cuts.flatMap((cut) => cut.cautions));
  const others = [...called].filter((key) => !alwaysShown.includes(key));
  return (
    <section className="cautions">
      <h2 className="small-head">{words.before}</h2>
      <ul className="plain-list">
        {alwaysShown.map((key) => (
          <li key={key}>{cautionText[key]}</li>
        ))}
      </ul>
      {others.length === 0 ? null : (
        <>
          <h3 className="small-head">{words.more}</h3>
          <ul className="plain-list">
            {others.map((key) => (
              <li key={key}>{cautionText[key]}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
