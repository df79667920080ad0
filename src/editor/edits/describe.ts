/** What a branch is: name, kind, condition, thickness, leaves, buds. */
import type { TreeFile } from '../../document/treeFile.ts';
import { midribSource } from '../../geometry/tree.ts';
import { axisOf, type Edited, refuse, type TreeAxis, withAxes } from '../edit.ts';
import { branchFigures } from '../figures.ts';
import { anyOutside } from '../limits.ts';
import { spreadBuds, typicalMidribM } from './add.ts';
import { leavesOf } from './leaves.ts';

export interface Description {
  readonly name?: string | undefined;
  readonly kind?: TreeAxis['kind'] | undefined;
  readonly condition?: TreeAxis['condition'] | undefined;
  readonly baseDiameterM?: number | undefined;
  readonly tipDiameterM?: number | undefined;
  /** Counted by the grower, so held as measured. 0 takes the leaves off. */
  readonly leafCount?: number | undefined;
  /** Buds are spread anew along the wood when their number changes. */
  readonly budCount?: number | undefined;
  /** What the plan must do with it, or null for its free choice. */
  readonly pin?: TreeAxis['pin'] | undefined;
  /** Whether it carried figs on the day of the sketch. */
  readonly bearsFigs?: boolean | undefined;
}

export function describe(file: TreeFile, id: string, said: Description): Edited {
  const { name, kind, condition, pin, bearsFigs, ...numbers } = said;
  const complaint = anyOutside(numbers);
  if (complaint !== null) return refuse(complaint);
  const axis = axisOf(file, id);
  if (name !== undefined && name.trim() === '')
    return refuse('A branch needs a name, so that it can be found on the tree.');
  if (kind !== undefined && (kind === 'trunk') !== (axis.parentId === null)) {
    return refuse('The trunk is the one branch that stands in the soil; no other can be the trunk.');
  }
  const next: TreeAxis = {
    ...axis,
    name: name?.trim().slice(0, 200) ?? axis.name,
    kind: kind ?? axis.kind,
    condition: condition ?? axis.condition,
    baseDiameterM: said.baseDiameterM ?? axis.baseDiameterM,
    tipDiameterM: said.tipDiameterM ?? axis.tipDiameterM,
    foliage: foliageOf(file, axis, said.leafCount),
    buds: budsOf(axis, said.budCount),
    pin: pin === undefined ? axis.pin : pin,
    ...(bearsFigs === undefined ? {} : { bearsFigs }),
  };
  if (next.tipDiameterM > next.baseDiameterM)
    return refuse('A branch cannot be thicker at its tip than at its base.');
  return { ok: true, file: withAxes(file, [next]), said: `Changed ${next.name}` };
}

function foliageOf(file: TreeFile, axis: TreeAxis, count: number | undefined): TreeAxis['foliage'] {
  if (count === undefined) return axis.foliage;
  if (count === 0) return null;
  const { foliage } = axis;
  return foliage === null
    ? leavesOf(count, 'measured', typicalMidribM(file), 'estimated')
    : leavesOf(count, 'measured', foliage.midribM, midribSource(foliage));
}

function budsOf(axis: TreeAxis, count: number | undefined): TreeAxis['buds'] {
  if (count === undefined || count === axis.buds.length) return axis.buds;
  return spreadBuds(axis.id, count, branchFigures(axis).lengthM);
}
