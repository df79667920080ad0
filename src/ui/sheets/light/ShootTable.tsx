/** The shoots by light. A row selects its shoot on the stage, and the stage brings its row into sight. */
import { useEffect, useRef, useState } from 'react';
import type { LightAnswer } from '../../../engine/engine.ts';
import { formatDecimal } from '../../../geometry/measure.ts';
import { useSelected, useView, useWorkbench } from '../../state/workbench.ts';
import type { LightScale } from '../../theme/lightScale.ts';
import type { ShootRow } from './figures.ts';
import { ShootDetail } from './ShootDetail.tsx';
import { timeWords } from './timeWords.ts';
import { doubtPercent, percent, lightWords as words } from './words.ts';

interface ShootTableProps {
  readonly rows: readonly ShootRow[];
  readonly scale: LightScale;
  /** Over the time shown; null while it is not known. */
  readonly shown: LightAnswer | null;
}

export function ShootTable({ rows, scale, shown }: ShootTableProps) {
  const { preferences } = useWorkbench();
  const { time } = useView();
  const [isDarkFirst, setDarkFirst] = useState(true);
  if (rows.length === 0) {
    return (
      <p>
        {words.noShoots}{' '}
        <button type="button" className="button" onClick={() => preferences.setState({ sheet: 'tree' })}>
          {words.toTree}
        </button>
      </p>
    );
  }
  const inOrder = isDarkFirst ? rows : rows.toReversed();
  return (
    <table className="rows shoots">
      <caption>
        <span className="table-head">
          <span className="small-head">{words.table}</span>
          <button type="button" className="button is-small" onClick={() => setDarkFirst(!isDarkFirst)}>
            {isDarkFirst ? words.darkestFirst : words.brightestFirst}
          </button>
        </span>
      </caption>
      <thead>
        <tr>
          <th scope="col">{words.columns.shoot}</th>
          <th scope="col" className="figure" aria-sort={isDarkFirst ? 'ascending' : 'descending'}>
            {words.columns.sky}
          </th>
          <th scope="col" className="figure">
            {timeWords.amount(time)}
          </th>
          <th scope="col" className="figure">
            {words.columns.leaf}
          </th>
        </tr>
      </thead>
      <tbody>
        {inOrder.map((row, rank) => (
          <Row key={row.id} row={row} rank={rank} scale={scale} shown={shown} />
        ))}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly row: ShootRow;
  /** Its place in the table. */
  readonly rank: number;
  readonly scale: LightScale;
  readonly shown: LightAnswer | null;
}

function Row({ row, rank, scale, shown }: RowProps) {
  const { editor, view, stage } = useWorkbench();
  const isSelected = useSelected() === row.id;
  const isHovered = useView().hoveredId === row.id;
  const place = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    // It stays in sight when finer figures give it another place.
    if (isSelected && rank >= 0) place.current?.scrollIntoView({ block: 'nearest' });
  }, [isSelected, rank]);
  const toggle = () => {
    editor.select(isSelected ? null : row.id);
    if (!isSelected) stage.current?.showOwner(row.id);
  };
  return (
    <>
      <tr
        ref={place}
        data-id={row.id}
        className={isSelected ? 'is-selected' : isHovered ? 'is-hovered' : ''}
        onPointerEnter={() => view.setState({ hoveredId: row.id })}
        onPointerLeave={() => view.setState({ hoveredId: null })}
      >
        <th scope="row">
          <button type="button" className="row-button" aria-pressed={isSelected} onClick={toggle}>
            <span
              className="swatch"
              style={{ backgroundColor: scale.css(row.lightFraction) }}
              aria-hidden="true"
            />
            {row.name}
          </button>
        </th>
        <td className="figure">
          <strong>{percent(row.lightFraction)}</strong> %
          <span className="quiet doubt">
            {row.standardError === null ? '' : ` ± ${doubtPercent(row.standardError)}`}
          </span>
        </td>
        <td className="figure">{formatDecimal(row.parMolM2, 1)}</td>
        <td className="figure">
          {row.leafLightFraction === null ? '' : `${percent(row.leafLightFraction)} %`}
        </td>
      </tr>
      {isSelected && row.all !== null && shown !== null ? (
        <tr className="detail-row">
          <td colSpan={4}>
            <ShootDetail
              shoot={row.all}
              nodes={shown.nodes.filter(({ shootId }) => shootId === row.id)}
              dayLengthH={shown.report.dayLengthH}
              scale={scale}
            />
          </td>
        </tr>
      ) : null}
    </>
  );
}
