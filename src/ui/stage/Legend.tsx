/** What the colours on the tree mean: a small bar, its limits in figures. */

import { lightWords, limitPercent } from '../sheets/light/words.ts';
import { thresholdsOf } from '../state/thresholds.ts';
import { useFile } from '../state/workbench.ts';
import { makeLightScale } from '../theme/lightScale.ts';

export function Legend() {
  const file = useFile();
  const { classes } = makeLightScale(thresholdsOf(file));
  return (
    <figure className="legend" aria-label={lightWords.legend}>
      <figcaption>{lightWords.legend}, %</figcaption>
      <div className="legend-bar" aria-hidden="true">
        {classes.map((c) => (
          <span key={c.name} style={{ backgroundColor: c.css }} />
        ))}
      </div>
      <div className="legend-figures">
        {classes.slice(1).map((c) => (
          <span key={c.name}>{limitPercent(c.from)}</span>
        ))}
      </div>
    </figure>
  );
}
