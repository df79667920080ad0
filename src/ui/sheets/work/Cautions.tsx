/** What to mind: the shortest form always in sight where work is proposed, the full one a tap away. */
import { cautionText } from '../../../plan/cautions.ts';
import type { CautionKey, Cut } from '../../../plan/cut.ts';
import { workWords as words } from './words.ts';

/** Called for by every list of work, or nearly; the others are told with the cuts that call for them. */
export const alwaysShown: readonly CautionKey[] = ['estimate', 'sap', 'tools'];

export function Cautions({ cuts }: { readonly cuts: readonly Cut[] }) {
  const called = new Set(cuts.flatMap((cut) => cut.cautions));
  const others = [...called].filter((key) => !alwaysShown.includes(key));
  return (
    <section className="cautions" aria-label={words.before}>
      <details>
        <summary>
          {words.cautionsInShort}
          {others.length === 0 ? '' : ` ${words.cautionsOfSome(others)}`}{' '}
          <span className="is-link">{words.inFull}</span>
        </summary>
        <ul className="plain-list">
          {[...alwaysShown, ...others].map((key) => (
            <li key={key}>{cautionText[key]}</li>
          ))}
        </ul>
      </details>
    </section>
  );
}
