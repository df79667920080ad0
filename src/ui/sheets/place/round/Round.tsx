/** What stands round the tree: the picture from above, the list, and the figures of what is picked. */
import { useState } from 'react';
import { changeSurrounding } from '../../../../editor/edits/place.ts';
import { useFile, useUnits, useWorkbench } from '../../../state/workbench.ts';
import { placeWords as words } from '../words.ts';
import { fresh } from './fresh.ts';
import { LightNow } from './LightNow.tsx';
import { PlanView } from './PlanView.tsx';
import type { Picked } from './planFrame.ts';
import { whereFrom } from './shapes.ts';
import { ThingForm } from './ThingForm.tsx';
import { TreeForm } from './TreeForm.tsx';

const kinds = ['wall', 'fence', 'hedge', 'box', 'crown'] as const;

export function Round() {
  const { editor } = useWorkbench();
  const file = useFile();
  const [wanted, setPicked] = useState<Picked>(null);
  const { surroundings } = file.site;
  // Undo may take away what is picked.
  const picked = typeof wanted === 'number' && wanted >= surroundings.length ? null : wanted;
  const thing = typeof picked === 'number' ? surroundings[picked] : undefined;
  return (
    <section>
      <h2 className="small-head">{words.round}</h2>
      <PlanView picked={picked} onPick={setPicked} />
      <LightNow />
      <p className="quiet small">{picked === null ? words.plan.how : words.plan.howPicked}</p>
      <RoundList picked={picked} onPick={setPicked} />
      {picked === 'tree' ? <TreeForm /> : null}
      {thing !== undefined && typeof picked === 'number' ? (
        <ThingForm key={picked} thing={thing} index={picked} onTakenAway={() => setPicked(null)} />
      ) : null}
      <div className="button-row add-row" role="group" aria-label={words.add}>
        {kinds.map((kind) => (
          <button
            key={kind}
            type="button"
            className="button"
            onClick={() => {
              const { length } = surroundings;
              const next = fresh(kind, file.standing.at, surroundings);
              if (editor.make((old) => changeSurrounding(old, length, next))) setPicked(length);
            }}
          >
            {words.addKind[kind]}
          </button>
        ))}
      </div>
    </section>
  );
}

function RoundList({
  picked,
  onPick,
}: {
  readonly picked: Picked;
  readonly onPick: (picked: Picked) => void;
}) {
  const file = useFile();
  const units = useUnits();
  const { standing, site } = file;
  const rows: readonly { readonly key: Picked; readonly name: string; readonly about: string }[] = [
    {
      key: 'tree',
      name: words.theTree,
      about: standing.pot === null ? words.standings.ground : words.potWords(standing.quarterTurnEveryWeeks),
    },
    ...site.surroundings.map((thing, index) => ({
      key: index,
      name: thing.name,
      about: `${words.kinds[thing.kind]}, ${whereFrom(thing, standing.at, units)}`,
    })),
  ];
  return (
    <ul className="round-list">
      {rows.map(({ key, name, about }) => (
        <li key={key} className={picked === key ? 'is-picked' : undefined}>
          <button
            type="button"
            className="row-button"
            aria-pressed={picked === key}
            onClick={() => onPick(picked === key ? null : key)}
          >
            {name} <span className="quiet small">{about}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
