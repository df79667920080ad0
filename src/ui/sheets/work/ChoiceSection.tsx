/** Gentle, balanced or bold: picked on the curve or beside it, and the same as a table. */
import { boldnesses, type ChoicePoint } from '../../../plan/choice.ts';
import { Segments } from '../../fields/Segments.tsx';
import { useView, useWorkbench } from '../../state/workbench.ts';
import { ChoiceChart } from './ChoiceChart.tsx';
import { choiceWords as words } from './choiceWords.ts';

export function ChoiceSection({ points }: { readonly points: readonly ChoicePoint[] }) {
  const { view } = useWorkbench();
  const { boldness } = useView();
  if (points.length < 2) return <p className="small quiet">{words.none}</p>;
  const choose = (chosen: typeof boldness) => view.setState({ boldness: chosen });
  const same = words.same(points);
  return (
    <section className="choosing" aria-label={words.title}>
      <p className="small quiet">{words.unit}</p>
      <Segments
        label={words.unit}
        isLabelHidden
        value={boldness}
        options={boldnesses.map((value) => ({ value, text: words.option(value, points) }))}
        onChoose={choose}
      />
      {same === null ? null : <p className="small quiet">{same}</p>}
      <ChoiceChart
        key={`${points.length} ${boldness}`}
        points={points}
        boldness={boldness}
        onChoose={choose}
      />
      <details>
        <summary>{words.table}</summary>
        <ChoiceTable points={points} />
      </details>
      <p className="small quiet">{words.meaning}</p>
    </section>
  );
}

function ChoiceTable({ points }: { readonly points: readonly ChoicePoint[] }) {
  return (
    <table className="rows" aria-label={words.table}>
      <thead>
        <tr>
          {words.columns.map((column, i) => (
            <th key={column} scope="col" className={i === 0 || i === 4 ? '' : 'figure'}>
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {points.map((point) => {
          const [shoots, ...cells] = words.row(point);
          return (
            <tr key={point.shoots} className={point.reads.length > 0 ? 'is-selected' : ''}>
              <th scope="row">{shoots}</th>
              {cells.map((cell, i) => (
                <td key={words.columns[i + 1]} className={i === 3 ? '' : 'figure'}>
                  {cell}
                </td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
