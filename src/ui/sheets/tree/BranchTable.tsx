/** Every branch in figures. */
import { useEffect, useRef } from 'react';
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
  return (
    <table className="rows branches" aria-label={words.table}>
      <thead>
        <tr>
          <th scope="col">{words.columns.branch}</th>
          <th scope="col" className="figure">
            {words.columns.length}
          </th>
          <th scope="col" className="figure">
            {words.columns.side}
          </th>
          <th scope="col" className="figure">
            {words.columns.upright}
          </th>
          <th scope="col" className="figure">
            {words.columns.growth}
          </th>
        </tr>
      </thead>
      <tbody>
        {branches.map((branch) => (
          <Branch key={branch.axis.id} branch={branch} isSelected={branch.axis.id === selected} />
        ))}
      </tbody>
    </table>
  );
}

function Branch({ branch, isSelected }: { readonly branch: ListedBranch; readonly isSelected: boolean }) {
  const { editor, view, stage } = useWorkbench();
  const { axis, depth } = branch;
  const units = useUnits();
  const { lengthM, bearingDeg, fromUprightDeg } = branchFigures(axis);
  const place = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    if (isSelected) place.current?.scrollIntoView({ block: 'nearest' });
  }, [isSelected]);
  const toggle = () => {
    editor.select(isSelected ? null : axis.id);
    if (!isSelected) stage.current?.showOwner(axis.id);
  };
  const leaves = axis.foliage?.count ?? 0;
  return (
    <>
      <tr
        ref={place}
        data-id={axis.id}
        className={isSelected ? 'is-selected' : ''}
        onPointerEnter={() => view.setState({ hoveredId: axis.id })}
        onPointerLeave={() => view.setState({ hoveredId: null })}
      >
        <th scope="row">
          <button
            type="button"
            className={`row-button depth-${Math.min(depth, 4)}`}
            aria-expanded={isSelected}
            onClick={toggle}
          >
            <span className="branch-name">{axis.name}</span>
            <BranchNote axis={axis} />
          </button>
        </th>
        <td className="figure">{formatLength(lengthM, units)}</td>
        <td className="figure">
          {fromUprightDeg < 1
            ? ''
            : `${quantities.bearing.write(bearingDeg, units)}° ${shortWind(bearingDeg)}`}
        </td>
        <td className="figure">{quantities.angle.write(fromUprightDeg, units)}°</td>
        <td className="figure">
          {leaves > 0 ? words.leaves(leaves) : axis.buds.length > 0 ? words.buds(axis.buds.length) : ''}
        </td>
      </tr>
      {isSelected ? (
        <tr className="form-row">
          <td colSpan={5}>
            <BranchForm axis={axis} />
          </td>
        </tr>
      ) : null}
    </>
  );
}

/** "SE" for south-east. */
const shortWind = (bearingDeg: number): string =>
  wind(bearingDeg)
    .split('-')
    .map((part) => part.charAt(0).toUpperCase())
    .join('');

function BranchNote({ axis }: { readonly axis: ListedBranch['axis'] }) {
  const file = useFile();
  const units = useUnits();
  const parent = file.axes.find((a) => a.id === axis.parentId);
  const parts = [
    words.kinds[axis.kind],
    parent === undefined ? null : `${formatLength(axis.atM, units)} along ${parent.name}`,
    `${formatLength(axis.baseDiameterM, units)} to ${formatLength(axis.tipDiameterM, units)} thick`,
    axis.condition === 'live' ? null : words.conditions[axis.condition],
    axis.pin === null ? null : words.pins[axis.pin],
  ];
  return <span className="quiet small branch-note">{parts.filter((part) => part !== null).join(', ')}</span>;
}
