/** Do nothing, the ticked cuts and the whole list, side by side. */
import { formatDecimal, formatLength, type Units } from '../../../geometry/measure.ts';
import type { Score } from '../../../plan/score.ts';
import { useUnits } from '../../state/workbench.ts';
import { workWords as words } from './words.ts';

interface ScoreTableProps {
  readonly score: { readonly doNothing: Score; readonly plan: Score };
  /** Null until it is known. */
  readonly ticked: Score | null;
  /** The ticked column is a first answer; the tree is being regrown for these cuts. */
  readonly isSettling: boolean;
  readonly isStale: boolean;
}

const lines: readonly { readonly name: string; readonly text: (score: Score, units: Units) => string }[] = [
  { name: words.rows.ripe, text: (s) => formatDecimal(s.ripeFigs, 1) },
  { name: words.rows.first, text: (s) => formatDecimal(s.firstCropFigs, 1) },
  { name: words.rows.wood, text: (s, units) => formatLength(s.fruitingWoodM, units) },
  { name: words.rows.dark, text: (s) => String(s.deepShadeCount) },
  { name: words.rows.shoots, text: (s) => String(s.shootCount) },
  { name: words.rows.light, text: (s) => `${formatDecimal(s.meanLight * 100, 0)} %` },
];

export function ScoreTable({ score, ticked, isSettling, isStale }: ScoreTableProps) {
  const units = useUnits();
  return (
    <details>
      <summary>{words.scoreTitle}</summary>
      <table className={isStale ? 'rows score is-stale' : 'rows score'} aria-label={words.score}>
        <thead>
          <tr>
            <th scope="col">{words.columns.what}</th>
            <th scope="col" className="figure">
              {words.columns.nothing}
            </th>
            <th scope="col" className="figure">
              {words.columns.ticked}
            </th>
            <th scope="col" className="figure">
              {words.columns.all}
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ name, text }, i) => (
            <tr key={name} className={i === 0 ? 'is-first' : ''}>
              <th scope="row">{name}</th>
              <td className="figure">{text(score.doNothing, units)}</td>
              <td
                className={isSettling ? 'figure is-chosen is-settling' : 'figure is-chosen'}
                data-testid={i === 0 ? 'ripe-ticked' : undefined}
              >
                {ticked === null ? '' : text(ticked, units)}
              </td>
              <td className="figure">{text(score.plan, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3 className="step-name">{words.meaning}</h3>
      {words.meanings.map((paragraph) => (
        <p key={paragraph} className="small">
          {paragraph}
        </p>
      ))}
    </details>
  );
}
