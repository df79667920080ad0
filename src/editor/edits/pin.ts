/** The grower's word on a branch or a bud: it stays, it goes, or the plan is free to choose. */
import type { TreeFile } from '../../document/treeFile.ts';
import { type Edited, refuse, withAxes } from '../edit.ts';

export type PinChoice = 'keep' | 'remove' | null;

/** Throws on an id that is neither a branch nor a bud: a stale id is a mistake of the caller. */
export function pinPart(file: TreeFile, id: string, pin: PinChoice): Edited {
  const axis = file.axes.find((one) => one.id === id || one.buds.some((bud) => bud.id === id));
  if (axis === undefined) throw new Error(`pinPart: no branch or bud with id ${id}`);
  if (axis.id !== id) {
    const buds = axis.buds.map((bud) => (bud.id === id ? { ...bud, pin } : bud));
    return { ok: true, file: withAxes(file, [{ ...axis, buds }]), said: said(`a bud on ${axis.name}`, pin) };
  }
  if (axis.parentId === null && pin === 'remove')
    return refuse('The trunk cannot be marked to go: no plan fells a tree.');
  return { ok: true, file: withAxes(file, [{ ...axis, pin }]), said: said(axis.name, pin) };
}

const said = (name: string, pin: PinChoice): string =>
  pin === null ? `Left ${name} to the plan` : `Marked ${name} to ${pin === 'keep' ? 'stay' : 'go'}`;

/** A branch or bud of the tree, as far as marks go. */
export interface Part {
  readonly id: string;
  readonly pin: PinChoice;
  readonly isBud: boolean;
  /** The branch itself, or the one that the bud sits on. */
  readonly branch: string;
  /** Along it, for a bud; metres. */
  readonly atM: number;
}

/** All that can be marked, in the order of the tree. */
function partsOf(file: TreeFile): Part[] {
  return file.axes.flatMap(({ id, name, pin, buds }) => [
    { id, pin, isBud: false, branch: name, atM: 0 },
    ...buds.map((bud) => ({ id: bud.id, pin: bud.pin, isBud: true, branch: name, atM: bud.atM })),
  ]);
}

export const partOf = (file: TreeFile, id: string): Part | null =>
  partsOf(file).find((part) => part.id === id) ?? null;

/** All that is marked, in the order of the tree. */
export const pinsOf = (file: TreeFile): readonly Part[] => partsOf(file).filter(({ pin }) => pin !== null);

/** Takes every mark back. */
export const freeAll = (file: TreeFile): Edited => ({
  ok: true,
  file: withoutPins(file),
  said: 'Left all marked growth to the plan',
});

/** Whether two files differ in marks at most: then a list made for the one still names wood of the other. */
export const sameButPins = (one: TreeFile, other: TreeFile): boolean =>
  one === other || JSON.stringify(withoutPins(one)) === JSON.stringify(withoutPins(other));

/** Whether the branches and buds of two files differ in marks at most. */
export const sameWood = (one: TreeFile, other: TreeFile): boolean =>
  one.axes === other.axes ||
  JSON.stringify(withoutPins(one).axes) === JSON.stringify(withoutPins(other).axes);

const withoutPins = (file: TreeFile): TreeFile => ({
  ...file,
  axes: file.axes.map((axis) => ({
    ...axis,
    pin: null,
    buds: axis.buds.map((bud) => ({ ...bud, pin: null })),
  })),
});
