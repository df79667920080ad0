/** A new branch before its figures are given. */
import type { TreeAxis } from './edit.ts';
import type { NewBranch } from './edits/add.ts';
import { branchFigures } from './figures.ts';

/** What grows on each kind of wood, and how large it usually is: a start for the grower's own figures. Our choice. */
export function firstGuess(parent: TreeAxis): NewBranch {
  const { lengthM, bearingDeg } = branchFigures(parent);
  const kind = parent.kind === 'trunk' ? 'scaffold' : parent.kind === 'scaffold' ? 'lateral' : 'shoot';
  const share = kind === 'shoot' ? 0.5 : 0.6;
  return {
    name: '',
    kind,
    parentId: parent.id,
    atM: lengthM * 0.7,
    lengthM: kind === 'scaffold' ? 0.5 : 0.3,
    bearingDeg: Math.round(bearingDeg),
    fromUprightDeg: 45,
    baseDiameterM: parent.baseDiameterM * share,
    tipDiameterM: parent.baseDiameterM * share * 0.5,
    condition: 'live',
    leafCount: kind === 'shoot' ? 8 : 0,
    budCount: 0,
  };
}
