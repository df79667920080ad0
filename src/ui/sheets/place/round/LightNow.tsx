/** What the tree gets with things as they stand, under the picture where they are moved. */
import { useStore } from 'zustand';
import { formatDecimal } from '../../../../geometry/measure.ts';
import { thresholdsOf } from '../../../state/thresholds.ts';
import { useFile, useWorkbench } from '../../../state/workbench.ts';
import { placeWords } from '../words.ts';

const words = placeWords.plan;

export function LightNow() {
  const { light } = useWorkbench();
  const file = useFile();
  const { file: litFile, answer } = useStore(light.store);
  if (answer === null || litFile?.id !== file.id)
    return <p className="light-now is-old">{words.workingOut}</p>;
  const { shoots } = answer.report;
  if (shoots.length === 0) return null;
  const { deepShade } = thresholdsOf(file);
  const dark = shoots.filter((shoot) => shoot.lightFraction < deepShade).length;
  const mean = shoots.reduce((sum, shoot) => sum + shoot.lightFraction, 0) / shoots.length;
  const isOld = litFile !== file;
  return (
    <p className={isOld ? 'light-now is-old' : 'light-now'} data-testid="light-now" aria-live="polite">
      {words.lightNow(formatDecimal(100 * mean, 0), dark, shoots.length)}
      {isOld ? ` ${words.workingAnew}` : ''}
    </p>
  );
}
