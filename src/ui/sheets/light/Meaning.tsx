/** What the figures mean, what they cannot tell, and where the limits come from. */

import { thresholdSources, thresholdsOf } from '../../state/thresholds.ts';
import { useFile } from '../../state/workbench.ts';
import { lightWords as words } from './words.ts';

export function Meaning() {
  const { fruitingLight, saturation } = thresholdsOf(useFile());
  const sources = words.sourceOf(thresholdSources.fruitingLight, thresholdSources.saturation, {
    fruiting: fruitingLight,
    saturation,
  });
  return (
    <>
      <details>
        <summary>{words.meaning}</summary>
        {words.meanings.map((paragraph) => (
          <p key={paragraph}>{paragraph}</p>
        ))}
      </details>
      <details>
        <summary>{words.sources}</summary>
        {sources.map((paragraph) => (
          <p key={paragraph}>{paragraph}</p>
        ))}
      </details>
    </>
  );
}
