/** How many shoots stand in each class of light: legend and answer in one. A class is tapped to find its shoots. */
import { isSameSpotlight } from '../../state/spotlight.ts';
import { useView, useWorkbench } from '../../state/workbench.ts';
import { type ClassCount, spotOf } from './figures.ts';
import { lightWords as words } from './words.ts';

export function ClassBar({
  counts,
  total,
}: {
  readonly counts: readonly ClassCount[];
  readonly total: number;
}) {
  if (total === 0) return null;
  return (
    <section className="classes" aria-label={words.legend}>
      <div className="class-bar" aria-hidden="true">
        {counts.map(({ lightClass, count }) => (
          <span
            key={lightClass.name}
            style={{ flexGrow: count, backgroundColor: lightClass.css, color: lightClass.inkCss }}
          >
            {count / total > 0.05 ? count : ''}
          </span>
        ))}
      </div>
      <ul className="class-list">
        {counts.map((one) => (
          <li key={one.lightClass.name}>
            <ClassButton {...one} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function ClassButton({ lightClass, count }: ClassCount) {
  const { view } = useWorkbench();
  const { spotlight } = useView();
  const spot = spotOf(lightClass);
  const isShown = isSameSpotlight(spotlight, spot);
  return (
    <button
      type="button"
      className="class-button"
      aria-pressed={isShown}
      disabled={count === 0 && !isShown}
      onClick={() => view.setState({ spotlight: isShown ? null : spot })}
    >
      <span className="swatch" style={{ backgroundColor: lightClass.css }} aria-hidden="true" />
      <span className="class-count">{count}</span>
      <span>{lightClass.name}</span>
      <span className="quiet class-range">{words.classes(lightClass.from, lightClass.to)}</span>
    </button>
  );
}
