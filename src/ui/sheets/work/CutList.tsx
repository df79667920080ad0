/** The cuts in order of work: tick, read, find, see. */
import { useStore } from 'zustand';
import { formatLength } from '../../../geometry/measure.ts';
import type { Cut } from '../../../plan/cut.ts';
import { placeText, reasonText, whatText } from '../../../plan/words.ts';
import { shortDay } from '../../fields/dates.ts';
import { useFile, useSelected, useUnits, useView, useWorkbench } from '../../state/workbench.ts';
import { alwaysShown } from './Cautions.tsx';
import { CutTag } from './CutTag.tsx';
import { workWords as words } from './words.ts';

interface CutListProps {
  readonly cuts: readonly Cut[];
  readonly isStale: boolean;
}

export function CutList({ cuts, isStale }: CutListProps) {
  const { plan: work } = useWorkbench();
  const { ticked, isTrying } = useStore(work.store);
  const ids = cuts.map((cut) => cut.id);
  return (
    <section>
      <div className="table-head">
        <h2 className="small-head">{words.cuts(cuts.length)}</h2>
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
      {cuts.some((cut) => cut.kind === 'rub off bud') ? <TreeShown /> : null}
      <ol className="cuts">
        {cuts.map((cut, i) => (
          <CutItem key={cut.id} cut={cut} n={i + 1} isTicked={ticked.has(cut.id)} isStale={isStale} />
        ))}
      </ol>
    </section>
  );
}

/** Buds are found on the bare tree; what rubbing them off does is seen in summer. */
function TreeShown() {
  const { view } = useWorkbench();
  const { isWorkBare } = useView();
  return (
    <fieldset className="choice-row">
      <legend className="unseen">{words.treeShown}</legend>
      {[false, true].map((isBare) => (
        <label key={String(isBare)} className="choice">
          <input
            type="radio"
            name="tree-shown"
            checked={isWorkBare === isBare}
            onChange={() => view.setState({ isWorkBare: isBare })}
          />
          {isBare ? words.treeNow : words.treeInSummer}
        </label>
      ))}
    </fieldset>
  );
}

interface CutItemProps {
  readonly cut: Cut;
  readonly n: number;
  readonly isTicked: boolean;
  readonly isStale: boolean;
}

function CutItem({ cut, n, isTicked, isStale }: CutItemProps) {
  const { plan: work, editor, stage, view } = useWorkbench();
  const units = useUnits();
  const file = useFile();
  const isSelected = useSelected() === cut.target;
  const show = () => {
    editor.select(cut.target);
    if (cut.kind === 'rub off bud') view.setState({ isWorkBare: true });
    stage.current?.showOwner(cut.target);
    if (view.getState().sheetSize === 'full') view.setState({ sheetSize: 'half' });
  };
  return (
    <li
      className={`cut${isTicked ? '' : ' is-unticked'}${isSelected ? ' is-selected' : ''}`}
      data-id={cut.id}
    >
      <div className="cut-head">
        <label className="tick">
          <input
            type="checkbox"
            checked={isTicked}
            disabled={isStale}
            onChange={(event) => work.tick([cut.id], event.target.checked)}
          />
          <CutTag kind={cut.kind} n={n} />
          <span className="cut-what">
            <span className="unseen">{n}. </span>
            {whatText(cut)}
          </span>
        </label>
        <button type="button" className="button is-small" onClick={show}>
          {words.showMe}
          <span className="unseen"> cut {n}</span>
        </button>
      </div>
      <p>{placeText(cut, units, file.site.viewpoint)}</p>
      <p className="cut-why">{cut.reasons.map((reason) => reasonText(reason, units)).join(' ')}</p>
      <Foot cut={cut} />
    </li>
  );
}

/** When, what it brings and what to mind. */
function Foot({ cut }: { readonly cut: Cut }) {
  const units = useUnits();
  const mind = cut.cautions.filter((key) => !alwaysShown.includes(key)).map((key) => words.cautionNames[key]);
  const parts = [
    words.when(shortDay(cut.when.from), shortDay(cut.when.to)),
    words.gain(cut.gain.figs),
    words.wood(cut.gain.fruitingWoodM, (m) => formatLength(m, units)),
  ];
  const lights = words.lights(cut.gain.lights);
  return (
    <>
      <p className="cut-foot">{parts.filter((part) => part !== null).join(' · ')}</p>
      {lights === null ? null : <p className="cut-foot">{lights}</p>}
      {mind.length === 0 ? null : (
        <p className="cut-mind">
          {words.alsoMind}: {mind.join(', ')}
        </p>
      )}
    </>
  );
}
