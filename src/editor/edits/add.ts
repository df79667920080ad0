/** A branch added by its figures: straight, where the grower says it is. */
import type { TreeFile } from '../../document/treeFile.ts';
import { pathLengthM } from '../../geometry/path.ts';
import { scale } from '../../geometry/vec.ts';
import { direction, wind, wrapDeg } from '../../geometry/world.ts';
import { axisOf, type Edited, refuse, type TreeAxis } from '../edit.ts';
import { anyOutside } from '../limits.ts';
import { divergenceDeg } from '../spiral.ts';

export interface NewBranch {
  /** Empty: a name is made from its side and what it grows on. */
  readonly name: string;
  readonly kind: Exclude<TreeAxis['kind'], 'trunk'>;
  readonly parentId: string;
  readonly atM: number;
  readonly lengthM: number;
  readonly bearingDeg: number;
  readonly fromUprightDeg: number;
  readonly baseDiameterM: number;
  readonly tipDiameterM: number;
  readonly condition: TreeAxis['condition'];
  readonly leafCount: number;
  readonly budCount: number;
}

/** Midrib of a new branch's leaves when the tree has none to go by, metres: the fig's usual adult blade. Common practice. */
const usualMidribM = 0.2;

export function add(file: TreeFile, branch: NewBranch): Edited {
  const { kind, name, ...figures } = branch;
  const { parentId, condition, ...numbers } = figures;
  const complaint = anyOutside(numbers);
  if (complaint !== null) return refuse(complaint);
  const parent = axisOf(file, parentId);
  const parentLengthM = pathLengthM(parent.path);
  if (branch.atM > parentLengthM + 5e-4) {
    return refuse(
      `${parent.name} is only ${(parentLengthM * 100).toFixed(0)} cm long. Give a smaller distance along it.`,
    );
  }
  if (branch.tipDiameterM > branch.baseDiameterM)
    return refuse('A branch cannot be thicker at its tip than at its base.');
  const id = freshId(file);
  const axis: TreeAxis = {
    id,
    name: name.trim() || freshName(file, kind, parent, branch.bearingDeg),
    kind,
    parentId,
    atM: Math.min(branch.atM, parentLengthM),
    path: [[0, 0, 0], [...scale(direction(branch.bearingDeg, 90 - branch.fromUprightDeg), branch.lengthM)]],
    baseDiameterM: branch.baseDiameterM,
    tipDiameterM: branch.tipDiameterM,
    grownIn: Number(file.season.sketchedOn.slice(0, 4)) - (kind === 'shoot' ? 0 : 1),
    condition,
    buds: spreadBuds(id, branch.budCount, branch.lengthM),
    foliage:
      branch.leafCount === 0
        ? null
        : { count: branch.leafCount, midribM: typicalMidribM(file), source: 'estimated' },
    pin: null,
  };
  return { ok: true, file: { ...file, axes: [...file.axes, axis] }, said: `Added ${axis.name}`, select: id };
}

/** Buds spread evenly from near the base to the tip, in a spiral. */
export function spreadBuds(id: string, count: number, lengthM: number): TreeAxis['buds'] {
  return Array.from({ length: count }, (_, i) => ({
    id: `${id}-bud${i + 1}`,
    atM: (lengthM * (i + 1)) / count,
    aroundDeg: wrapDeg(i * divergenceDeg),
    pin: null,
  }));
}

/** The middle midrib of the tree's leafy branches, metres. */
export function typicalMidribM(file: TreeFile): number {
  const midribs = file.axes
    .flatMap((axis) => (axis.foliage === null ? [] : [axis.foliage.midribM]))
    .sort((a, b) => a - b);
  return midribs[Math.floor(midribs.length / 2)] ?? usualMidribM;
}

function freshId(file: TreeFile): string {
  const used = new Set(file.axes.flatMap((axis) => [axis.id, ...axis.buds.map((bud) => bud.id)]));
  let n = file.axes.length + 1;
  while (used.has(`added-${n}`)) n++;
  return `added-${n}`;
}

function freshName(file: TreeFile, kind: NewBranch['kind'], parent: TreeAxis, bearingDeg: number): string {
  const word = kind === 'scaffold' ? 'limb' : kind;
  const base = `${parent.name}, ${wind(bearingDeg)} ${word}`.slice(0, 190);
  const used = new Set(file.axes.map((axis) => axis.name));
  if (!used.has(base)) return base;
  let n = 2;
  while (used.has(`${base} ${n}`)) n++;
  return `${base} ${n}`;
}
