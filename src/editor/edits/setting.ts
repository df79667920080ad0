/** Figures of the species that the grower sets for this tree. */
import type { TreeFile } from '../../document/treeFile.ts';
import { type FigParameterName, figParameters, figValues } from '../../species/fig.ts';
import type { Parameter } from '../../species/parameter.ts';
import { type Edited, refuse } from '../edit.ts';

/** Sets a figure, or with null brings back the published one. Throws on a figure that is not the grower's to set. */
export function changeSetting(file: TreeFile, name: FigParameterName, value: number | null): Edited {
  const figure: Parameter = figParameters[name];
  if (!figure.adjustable) throw new Error(`changeSetting: ${name} is not the grower's to set`);
  if (value !== null && !(value >= figure.min && value <= figure.max)) {
    return refuse(`That cannot be used: ${figure.name} is ${figure.min} to ${figure.max}, ${figure.unit}.`);
  }
  const { [name]: _, ...others } = file.settings;
  const settings = value === null || value === figure.value ? others : { ...others, [name]: value };
  const { fruitHalfAtFraction, fruitFullFromFraction } = figValues(settings);
  if (!(fruitHalfAtFraction < fruitFullFromFraction)) {
    return refuse('That cannot be used: all figs set only in more light than half of them.');
  }
  return { ok: true, file: { ...file, settings }, said: `Set: ${figure.name}` };
}
