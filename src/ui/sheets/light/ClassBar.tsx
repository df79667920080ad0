/** How many shoots stand in each class of light: legend and answer in one. */
import type { ClassCount } from './figures.ts';
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
        {counts.map(({ lightClass, count }) => (
          <li key={lightClass.name}>
            <span className="swatch" style={{ backgroundColor: lightClass.css }} aria-hidden="true" />
            <span className="class-count">{count}</span>
            <span>{lightClass.name}</span>
            <span className="quiet class-range">{words.classes(lightClass.from, lightClass.to)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
