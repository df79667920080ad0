/** A new branch before its figures are given. */
import type { TreeFile } from '../document/treeFile.ts';
import { leftDiameterM } from '../geometry/branchArea.ts';
import { baseDiameterM } from '../growth/shootForm.ts';
import { figForms } from '../species/fig/forms.ts';
import { figValues } from '../species/fig.ts';
import type { TreeAxis } from './edit.ts';
import type { NewBranch } from './edits/add.ts';
import { branchFigures } from './figures.ts';

/** The guess is neither thinner nor thicker, as a share of the wood it leaves: our choice. */
const thinnestShare = 0.35;
const thickestShare = 0.75;

/**
 * Base of a new branch: by its length for a shoot, otherwise what the rule of branch areas leaves beside the wood's own tip
 * and what grows beyond that place.
 */
export function thicknessOnM(
  file: TreeFile,
  parent: TreeAxis,
  kind: NewBranch['kind'],
  lengthM: number,
  atM: number,
): number {
  const share = atM / branchFigures(parent).lengthM;
  const woodM = parent.baseDiameterM + (parent.tipDiameterM - parent.baseDiameterM) * share;
  const beyond = file.axes.filter((axis) => axis.parentId === parent.id && axis.atM >= atM);
  const carriedM = [parent.tipDiameterM, ...beyond.map((axis) => axis.baseDiameterM)];
  const byRuleM =
    kind === 'shoot'
      ? baseDiameterM(lengthM, figValues(file.settings))
      : leftDiameterM(woodM, carriedM, figForms.branchAreaExponent.value);
  return Math.min(thickestShare * woodM, Math.max(thinnestShare * woodM, byRuleM));
}

/** What grows on each kind of wood, and how large it usually is: a start for the grower's own figures. Our choice. */
export function firstGuess(file: TreeFile, parent: TreeAxis): NewBranch {
  const figures = branchFigures(parent);
  const kind = parent.kind === 'trunk' ? 'scaffold' : parent.kind === 'scaffold' ? 'lateral' : 'shoot';
  const lengthM = kind === 'scaffold' ? 0.5 : 0.3;
  const atM = figures.lengthM * 0.7;
  const baseM = thicknessOnM(file, parent, kind, lengthM, atM);
  return {
    name: '',
    kind,
    parentId: parent.id,
    atM,
    lengthM,
    bearingDeg: Math.round(figures.bearingDeg),
    fromUprightDeg: 45,
    baseDiameterM: baseM,
    tipDiameterM: baseM * 0.5,
    condition: 'live',
    leafCount: kind === 'shoot' ? 8 : 0,
    budCount: 0,
  };
}
