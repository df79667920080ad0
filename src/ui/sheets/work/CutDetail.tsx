/** All that is known of one cut, and the grower's own word on it. */
import { useStore } from 'zustand';
import { formatLength } from '../../../geometry/measure.ts';
import { cautionText } from '../../../plan/cautions.ts';
import type { Cut } from '../../../plan/cut.ts';
import { ifKeptText, passText, placeText, reasonText, whatText } from '../../../plan/words.ts';
import { standsText } from '../../../plan/worlds/standsWords.ts';
import { longDay } from '../../fields/dates.ts';
import { useFile, useUnits, useView, useWorkbench } from '../../state/workbench.ts';
import { alwaysShown } from './Cautions.tsx';
import { cutWords as words } from './cutWords.ts';
import { PinButtons } from './PinButtons.tsx';

export function CutDetail({ cut }: { readonly cut: Cut }) {
  const units = useUnits();
  const { site } = useFile();
  const { plan } = useStore(useWorkbench().plan.store);
  const { figs, fruitingWoodM, lights } = cut.gain;
  const facts: readonly (readonly [string, string | null])[] = [
    [words.where, `${whatText(cut)}. ${placeText(cut, units, site.viewpoint)}`],
    [words.why, cut.reasons.map((reason) => reasonText(reason, units)).join(' ')],
    [words.brings, words.gain(figs, fruitingWoodM, (m) => formatLength(m, units))],
    [words.light, words.lights(lights)],
    [words.sureTitle, standsText(cut, plan?.confidence ?? null, units)],
    [words.overrule, words.price(ifKeptText(cut.ifKept))],
    [
      words.whenTitle,
      words.whenInPass(words.when(longDay(cut.when.from), longDay(cut.when.to)), passText(cut)),
    ],
  ];
  const mind = cut.cautions.filter((key) => !alwaysShown.includes(key));
  return (
    <div className="cut-detail">
      <dl>
        {facts.map(([name, text]) =>
          text === null ? null : (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{text}</dd>
            </div>
          ),
        )}
      </dl>
      {mind.length === 0 ? null : (
        <ul className="plain-list cut-mind">
          {mind.map((key) => (
            <li key={key}>{cautionText[key]}</li>
          ))}
        </ul>
      )}
      <div className="button-row">
        <ShowButton cut={cut} />
        <PinButtons id={cut.target} />
      </div>
    </div>
  );
}

function ShowButton({ cut }: { readonly cut: Cut }) {
  const { editor, stage, view } = useWorkbench();
  const { sheetSize } = useView();
  const show = () => {
    editor.select(cut.target);
    if (cut.kind === 'rub off bud') view.setState({ isWorkBare: true });
    stage.current?.showOwner(cut.target);
    if (sheetSize === 'full') view.setState({ sheetSize: 'half' });
  };
  return (
    <button type="button" className="button is-small" onClick={show}>
      {words.show}
    </button>
  );
}
