/** The limits at which the meaning of light changes: where they come from, and the grower's own in their place. */
import { changeSetting } from '../../../editor/edits/setting.ts';
import { figParameters } from '../../../species/fig.ts';
import { NumberField } from '../../fields/NumberField.tsx';
import { quantities } from '../../fields/quantities.ts';
import { thresholdSources, thresholdsOf } from '../../state/thresholds.ts';
import { useFile, useWorkbench } from '../../state/workbench.ts';
import { lightWords as words } from './words.ts';

/** The two that are set; deep shade follows from fruiting light. */
const limits = [
  { name: 'fruitHalfAtFraction', of: 'fruitingLight' },
  { name: 'fruitFullFromFraction', of: 'saturation' },
] as const;

export function Limits() {
  const file = useFile();
  const thresholds = thresholdsOf(file);
  return (
    <details>
      <summary>
        {words.sources}
        {limits.some(({ name }) => name in file.settings) ? (
          <span className="mark"> {words.changed}</span>
        ) : null}
      </summary>
      {limits.map(({ name, of }) => (
        <Limit key={name} name={name} value={thresholds[of]} source={thresholdSources[of]} />
      ))}
      <p>{words.deepShadeIs(thresholds.deepShade)}</p>
    </details>
  );
}

interface LimitProps {
  readonly name: (typeof limits)[number]['name'];
  readonly value: number;
  readonly source: string;
}

function Limit({ name, value, source }: LimitProps) {
  const { editor } = useWorkbench();
  const { settings } = useFile();
  const figure = figParameters[name];
  const set = (to: number | null): void => void editor.make((file) => changeSetting(file, name, to));
  return (
    <div className="limit">
      <NumberField label={words.limits[name]} value={value} quantity={quantities.percent} onCommit={set} />
      {name in settings ? (
        <p className="limit-changed">
          <span className="mark">{words.changedFrom(figure.value)}</span>
          <button type="button" className="button is-small" onClick={() => set(null)}>
            {words.backTo(figure.value)}
          </button>
        </p>
      ) : null}
      <p className="quiet small">{words.sourceIs(source, figure.confidence, figure.min, figure.max)}</p>
    </div>
  );
}
