/** How thick a branch would be by the rule of branch areas. */
import type { TreeFile } from '../../document/treeFile.ts';
import { joinedDiameterM } from '../../geometry/branchArea.ts';
import { figForms } from '../../species/fig/forms.ts';
import type { TreeAxis } from '../edit.ts';
import { axisOf } from '../edit.ts';
import { branchFigures } from '../figures.ts';
import { thicknessOnM } from '../firstGuess.ts';

/** Base diameter, metres: from its tip and what it carries; of wood that carries nothing, what its parent has left for it. */
export function thicknessByRuleM(file: TreeFile, axis: TreeAxis): number {
  const carriedM = file.axes.filter((one) => one.parentId === axis.id).map((one) => one.baseDiameterM);
  if (carriedM.length === 0 && axis.parentId !== null && axis.kind !== 'trunk') {
    const without = { ...file, axes: file.axes.filter((one) => one.id !== axis.id) };
    const parent = axisOf(file, axis.parentId);
    return thicknessOnM(without, parent, axis.kind, branchFigures(axis).lengthM, axis.atM);
  }
  return joinedDiameterM([axis.tipDiameterM, ...carriedM], figForms.branchAreaExponent.value);
}
