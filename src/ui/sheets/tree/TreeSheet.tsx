/** What grew: every branch in figures; the one that is selected can be changed. */
import { useMemo, useState } from 'react';
import { branchOf } from '../../../editor/selection.ts';
import { Segments } from '../../fields/Segments.tsx';
import { CommandButton } from '../../frame/CommandButton.tsx';
import { useFile, useSelected, useView, useWorkbench } from '../../state/workbench.ts';
import { AddBranch } from './AddBranch.tsx';
import { BranchTable } from './BranchTable.tsx';
import { listBranches } from './branchList.ts';
import { BranchGrid } from './grid/BranchGrid.tsx';
import { LeafOut } from './leaves/LeafOut.tsx';
import { StartSheet } from './start/StartSheet.tsx';
import { treeWords as words } from './words.ts';

export function TreeSheet() {
  return useView().isStarting ? <StartSheet /> : <OpenTree />;
}

function OpenTree() {
  const { view } = useWorkbench();
  const { isGrid } = useView();
  const file = useFile();
  const selected = branchOf(file, useSelected());
  const [isAdding, setAdding] = useState(false);
  const branches = useMemo(() => listBranches(file), [file]);
  const parent = file.axes.find((axis) => axis.id === selected) ?? file.axes[0];
  const count = (kind: string) => file.axes.filter((axis) => axis.kind === kind).length;
  const counts = {
    trunk: count('trunk'),
    scaffold: count('scaffold'),
    lateral: count('lateral'),
    shoot: count('shoot'),
    sucker: count('sucker'),
  };
  const leaves = file.axes.reduce((sum, axis) => sum + (axis.foliage?.count ?? 0), 0);
  const buds = file.axes.reduce((sum, axis) => sum + axis.buds.length, 0);
  if (parent === undefined) return null;
  return (
    <>
      <p className="headline">{words.headline(counts, leaves, buds)}</p>
      {isAdding && !isGrid ? (
        <AddBranch parent={parent} onDone={() => setAdding(false)} />
      ) : (
        <div className="button-row">
          {isGrid ? null : (
            <button type="button" className="button" onClick={() => setAdding(true)}>
              {words.addOn(parent.name)}
            </button>
          )}
          <CommandButton id="start" />
        </div>
      )}
      <Segments
        label={words.shownAs}
        isLabelHidden
        value={isGrid ? 'table' : 'list'}
        options={(['list', 'table'] as const).map((value) => ({ value, text: words.showns[value] }))}
        onChoose={(chosen) => view.setState({ isGrid: chosen === 'table' })}
      />
      <LeafOut />
      {isGrid ? <BranchGrid /> : <BranchTable branches={branches} selected={selected} />}
    </>
  );
}
