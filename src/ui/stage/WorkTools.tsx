/** Over the stage, beside the Work sheet: the tree as it is or in summer, and the grower's word on what is picked. */
import { useStore } from 'zustand';
import { type Part, partOf } from '../../editor/edits/pin.ts';
import { Segments } from '../fields/Segments.tsx';
import { PinButtons } from '../sheets/work/PinButtons.tsx';
import { pinWords } from '../sheets/work/pinWords.ts';
import { workWords as words } from '../sheets/work/words.ts';
import { useFile, usePreferences, useSelected, useUnits, useView, useWorkbench } from '../state/workbench.ts';

export function WorkTools() {
  const { sheet } = usePreferences();
  const file = useFile();
  const selectedId = useSelected();
  const part = selectedId === null ? null : partOf(file, selectedId);
  if (sheet !== 'work') return null;
  return (
    <div className="work-tools">
      <TreeShown />
      {part === null ? null : <Picked part={part} />}
    </div>
  );
}

/** Buds are found on the bare tree; what rubbing them off does is seen in summer. */
function TreeShown() {
  const { plan: work, view } = useWorkbench();
  const { isWorkBare } = useView();
  const { plan } = useStore(work.store);
  if (plan?.cuts.some(({ kind }) => kind === 'rub off bud') !== true) return null;
  return (
    <Segments
      label={words.treeShown}
      isLabelHidden
      value={isWorkBare ? 'bare' : 'summer'}
      options={[
        { value: 'bare', text: words.treeNow },
        { value: 'summer', text: words.treeInSummer },
      ]}
      onChoose={(shown) => view.setState({ isWorkBare: shown === 'bare' })}
    />
  );
}

function Picked({ part }: { readonly part: Part }) {
  const name = pinWords.name(part, useUnits());
  return (
    <div className="picked" role="group" aria-label={pinWords.picked(name)}>
      <span className="picked-name">{name}</span>
      <PinButtons id={part.id} />
    </div>
  );
}
