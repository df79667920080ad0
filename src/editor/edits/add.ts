/** A branch added by its figures, where the grower says it is. */
import type { TreeFile } from '../../document/treeFile.ts';
import { pathLengthM } from '../../geometry/path.ts';
import { midribSource } from '../../geometry/tree.ts';
import { add as add3, scale } from '../../geometry/vec.ts';
import { direction, wind, wrapDeg } from '../../geometry/world.ts';
import { axisOf, type Edited, refuse, type TreeAxis } from '../edit.ts';
import { freshIds, freshName, namesOf } from '../freshIds.ts';
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
  const [id = ''] = freshIds(file, 1);
  const axis: TreeAxis = {
    id,
    name: name.trim() || nameOf(file, kind, parent, branch.bearingDeg),
    kind,
    parentId,
    atM: Math.min(branch.atM, parentLengthM),
    path: bowedPath(branch.lengthM, branch.bearingDeg, branch.fromUprightDeg),
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

/** Midrib of a new branch's leaves, metres: as measured for the tree, else the middle one of those measured, else of all. */
export function typicalMidribM(file: TreeFile): number {
  const { leafMidribCm } = file.settings;
  if (leafMidribCm !== undefined) return leafMidribCm / 100;
  const leafy = file.axes.flatMap(({ foliage }) => (foliage === null ? [] : [foliage]));
  const measured = leafy.filter((one) => midribSource(one) === 'measured');
  const midribs = (measured.length > 0 ? measured : leafy)
    .map(({ midribM }) => midribM)
    .sort((a, b) => a - b);
  return midribs[Math.floor(midribs.length / 2)] ?? usualMidribM;
}

function nameOf(file: TreeFile, kind: NewBranch['kind'], parent: TreeAxis, bearingDeg: number): string {
  const word = kind === 'scaffold' ? 'limb' : kind;
  return freshName(namesOf(file), `${parent.name}, ${wind(bearingDeg)} ${word}`);
}

/** How far a new branch bows below the straight line to its tip, as a share of it: a usual look, our choice. */
const bow = 0.05;

/**
 * A course that sets out flatter and turns up, whose length, side and angle from base to tip are exactly those given. Wood that
 * points straight up or down has no flatter way and bows to its side.
 */
export function bowedPath(lengthM: number, bearingDeg: number, fromUprightDeg: number): TreeAxis['path'] {
  const ahead = direction(bearingDeg, 90 - fromUprightDeg);
  const below = direction(bearingDeg, -fromUprightDeg);
  const shape = [0, 0.25, 0.5, 0.75, 1].map((t) =>
    add3(scale(ahead, t), scale(below, 4 * bow * t * (1 - t))),
  );
  const perM = lengthM / pathLengthM(shape);
  return shape.map((point) => [...scale(point, perM)] as [number, number, number]);
}
