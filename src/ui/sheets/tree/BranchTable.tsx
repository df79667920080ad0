/** Every branch in figures. */
import { useEffect, useRef } from 'react';
import type { TreeAxis } from '../../../editor/edit.ts';
import { branchFigures } from '../../../editor/figures.ts';
import { formatLength } from '../../../geometry/measure.ts';
import { wind } from '../../../geometry/world.ts';
import { quantities } from '../../fields/quantities.ts';
import { useFile, useUnits, useWorkbench } from '../../state/workbench.ts';
import { BranchForm } from './BranchForm.tsx';
import type { ListedBranch } from './branchList.ts';
import { treeWords as words } from './words.ts';

interface BranchTableProps {
  readonly branches: readonly ListedBranch[];
  readonly selected: string | null;
}

export function BranchTable({ branches, selected }: BranchTableProps) {
  const { columns } = words;
  return (
    <table className="rows branches" aria-label={words.table}>
      <thead>
        <tr>
          {[columns.length, columns.side, columns.upright, columns.thick, columns.growth].map((column) => (
            <th key={column} scope="col" className="figure">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      {branches.map((branch) => (
        <Branch key={branch.axis.id} branch={branch} isSelected={branch.axis.id === selected} />
      ))}
    </table>
  );
}

/** Two lines: which branch, and its figures. Chosen, its form follows. */
function Branch({ branch, isSelected }: { readonly branch: ListedBranch; readonly isSelected: boolean }) {
  const { editor, view, stage } = useWorkbench();
  const { axis, depth } = branch;
  const place = useRef<HTMLTableSectionElement>(null);
  useEffect(() => {
    if (isSelected) place.current?.scrollIntoView({ block: 'nearest' });
  }, [isSelected]);
  const toggle = () => {
    editor.select(isSelected ? null : axis.id);
    if (!isSelected) stage.current?.showOwner(axis.id);
  };
  return (
    <tbody
      ref={place}
      data-id={axis.id}
      className={`depth-${Math.min(depth, 3)}${isSelected ? ' is-selected' : ''}`}
      onPointerEnter={() => view.setState({ hoveredId: axis.id })}
      onPointerLeave={() => view.setState({ hoveredId: null })}
    >
      <tr className="branch-head">
        <th scope="rowgroup" colSpan={5}>
          <button type="button" className="row-button" aria-expanded={isSelected} onClick={toggle}>
            <span className="branch-name">{axis.name}</span> <BranchNote axis={axis} />
          </button>
        </th>
      </tr>
      <Figures axis={axis} />
      {isSelected ? (
        <tr className="form-row">
          <td colSpan={5}>
            <BranchForm axis={axis} />
          </td>
        </tr>
      ) : null}
    </tbody>
  );
}

function Figures({ axis }: { readonly axis: TreeAxis }) {
  const units = useUnits();
  const { lengthM, bearingDeg, fromUprightDeg } = branchFigures(axis);
  const { bearing, angle, thickness } = quantities;
  const leaves = axis.foliage?.count ?? 0;
  const buds = axis.buds.length;
  return (
    <tr className="branch-figures">
      <td className="figure">{formatLength(lengthM, units)}</td>
      <td className="figure">
        {fromUprightDeg < 1 ? '' : `${bearing.write(bearingDeg, units)}° ${shortWind(bearingDeg)}`}
      </td>
      <td className="figure">{angle.write(fromUprightDeg, units)}°</td>
      <td className="figure">
        {thickness.write(axis.baseDiameterM, units)}–{thickness.write(axis.tipDiameterM, units)}{' '}
        {thickness.unit(units)}
      </td>
      <td className="figure">{leaves > 0 ? words.leaves(leaves) : buds > 0 ? words.buds(buds) : ''}</td>
    </tr>
  );
}

/** "SE" for south-east. */
const shortWind = (bearingDeg: number): string =>
  wind(bearingDeg)
    .split('-')
    .map((part) => part.charAt(0).toUpperCase())
    .join('');

function BranchNote({ axis }: { readonly axis: TreeAxis }) {
  const file = useFile();
  const units = useUnits();
  const parent = file.axes.find((a) => a.id === axis.parentId);
  const kind = words.kinds[axis.kind];
  const parts = [
    // "South-east limb" says what it is by itself.
    parent === undefined || axis.name.includes(kind) ? null : kind,
    parent === undefined ? null : `${formatLength(axis.atM, units)} along ${parent.name}`,
    axis.condition === 'live' ? null : words.conditions[axis.condition],
    axis.bearsFigs === true ? words.figs.yes : null,
    axis.pin === null ? null : words.pins[axis.pin],
  ];
  return <span className="quiet small branch-note">{parts.filter((part) => part !== null).join(', ')}</span>;
}
