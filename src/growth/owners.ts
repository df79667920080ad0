/** Numbers for what can be cut. */
import type { Axis, Bud, Tree } from '../geometry/tree.ts';
import type { Owner } from './canopy.ts';

/** An axis or a bud of the tree with its number. */
export interface Member {
  readonly owner: number;
  readonly parent: number;
  readonly axis: Axis;
  /** Null for the axis itself. */
  readonly bud: Bud | null;
  readonly gone: boolean;
}

export const isLeafy = (axis: Axis): boolean =>
  axis.foliage !== null && axis.foliage.count > 0 && axis.condition !== 'dead';

/** Buds grow on live wood without leaves; those in the axils of this season's leaves rest until next year. */
const budsThatGrow = (axis: Axis): readonly Bud[] =>
  axis.condition === 'dead' || isLeafy(axis) ? [] : axis.buds;

/**
 * Every axis, then every bud that can grow; entry i has owner i + 1. The numbers depend on the tree alone.
 * What grew from something gone is gone too. Throws on an id used twice.
 */
export function numberMembers(tree: Tree, gone: ReadonlySet<string>): readonly Member[] {
  const members: Member[] = [];
  const byId = new Map<string, Member>();
  const take = (axis: Axis, bud: Bud | null, parent: Member | undefined): void => {
    const id = bud === null ? axis.id : bud.id;
    if (byId.has(id)) throw new Error(`numberMembers: an id must be used once, got ${id} twice`);
    const isGone = gone.has(id) || parent?.gone === true;
    const member = { owner: members.length + 1, parent: parent?.owner ?? 0, axis, bud, gone: isGone };
    members.push(member);
    byId.set(id, member);
  };
  for (const axis of tree.axes)
    take(axis, null, axis.parentId === null ? undefined : byId.get(axis.parentId));
  for (const axis of tree.axes) for (const bud of budsThatGrow(axis)) take(axis, bud, byId.get(axis.id));
  return members;
}

/** The canopy's list of owners. `leafy` says which owners carry leaves. */
export function ownersOf(members: readonly Member[], leafy: ReadonlySet<number>): readonly (Owner | null)[] {
  return [
    null,
    ...members.map(({ owner, parent, axis, bud, gone }): Owner | null => {
      if (gone) return null;
      const [id, kind] = bud === null ? [axis.id, 'axis' as const] : [bud.id, 'bud' as const];
      return { id, kind, parent, leafy: leafy.has(owner) };
    }),
  ];
}

/**
 * Which owners still stand without the given axes and buds: entry per owner, 1 stands, 0 gone. An owner goes
 * when the wood it grew from goes. Entry 0, the surroundings, always stands.
 * @param goneIds ids of axes and buds; those the canopy does not have change nothing
 */
export function ownersLeft(owners: readonly (Owner | null)[], goneIds: ReadonlySet<string>): Uint8Array {
  const left = new Uint8Array(owners.length);
  left[0] = 1;
  owners.forEach((owner, number) => {
    if (owner === null) return;
    if (owner.parent >= number) throw new Error(`ownersLeft: owner ${owner.id} comes before its parent`);
    left[number] = !goneIds.has(owner.id) && left[owner.parent] === 1 ? 1 : 0;
  });
  return left;
}
