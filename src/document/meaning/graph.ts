/** Whether the axes make one tree: ids used once, one trunk, every other axis on an axis that exists, no circle. */
import { quoted } from '../refusal.ts';
import type { FileAxis, Finding } from './finding.ts';

/** An id stands for one thing, be it axis or bud: shoots are known by the bud they grow from. */
export function findRepeatedId(axes: readonly FileAxis[]): Finding | null {
  const seen = new Set<string>();
  for (const [i, axis] of axes.entries()) {
    if (seen.has(axis.id)) return repeated(axis.id, ['axes', i, 'id']);
    seen.add(axis.id);
  }
  for (const [i, axis] of axes.entries()) {
    for (const [j, bud] of axis.buds.entries()) {
      if (seen.has(bud.id)) return repeated(bud.id, ['axes', i, 'buds', j, 'id']);
      seen.add(bud.id);
    }
  }
  return null;
}

const repeated = (id: string, place: Finding['place']): Finding => ({
  place,
  reason: `The id ${quoted(id)} is used twice, so a cut could not say which one it means. Give this one an id of its own.`,
});

/** One trunk and only one has no parent. */
export function findWrongTrunk(axes: readonly FileAxis[]): Finding | null {
  let trunkAt = -1;
  for (const [i, axis] of axes.entries()) {
    const isTrunk = axis.kind === 'trunk';
    if (isTrunk && axis.parentId !== null) {
      return {
        place: ['axes', i, 'parentId'],
        reason: `A trunk grows from the soil, so its parentId must be null, got ${quoted(axis.parentId)}.`,
      };
    }
    if (!isTrunk && axis.parentId === null) {
      return {
        place: ['axes', i, 'parentId'],
        reason:
          'This branch says of no wood that it grows from it. Only the trunk may have no parentId; name the branch it grows from.',
      };
    }
    if (isTrunk && trunkAt >= 0) {
      return {
        place: ['axes', i, 'kind'],
        reason:
          'There is a second trunk. A tree has one; stems from the soil are suckers of the trunk, or another tree in a file of its own.',
      };
    }
    if (isTrunk) trunkAt = i;
  }
  return trunkAt >= 0
    ? null
    : {
        place: ['axes'],
        reason: 'There is no trunk. One axis must be of the kind "trunk" and have the parentId null.',
      };
}

export function findOrphan(axes: readonly FileAxis[]): Finding | null {
  const ids = new Set(axes.map((axis) => axis.id));
  const i = axes.findIndex((axis) => axis.parentId !== null && !ids.has(axis.parentId));
  if (i < 0) return null;
  return {
    place: ['axes', i, 'parentId'],
    reason: `It grows from ${quoted(axes[i]?.parentId)}, which is not in the file. Name a branch that is, or add the missing one.`,
  };
}

/**
 * Indices of the axes in an order in which every axis comes after its parent, otherwise as they were. What
 * hangs in a circle is left out. All parents must exist.
 */
export function parentsFirst(axes: readonly FileAxis[]): number[] {
  const children = new Map<string | null, number[]>();
  const listed = new Set<string | null>([null]);
  const order: number[] = [];
  const settle = (first: number): void => {
    const waiting = [first];
    for (let i = waiting.pop(); i !== undefined; i = waiting.pop()) {
      const { id } = axes[i] as FileAxis;
      order.push(i);
      listed.add(id);
      waiting.push(...(children.get(id) ?? []).reverse());
    }
  };
  for (const [i, axis] of axes.entries()) {
    if (listed.has(axis.parentId)) settle(i);
    else children.set(axis.parentId, [...(children.get(axis.parentId) ?? []), i]);
  }
  return order;
}

export function findCircle(axes: readonly FileAxis[], order: readonly number[]): Finding | null {
  if (order.length === axes.length) return null;
  const placed = new Set(order);
  const i = axes.findIndex((_, index) => !placed.has(index));
  return {
    place: ['axes', i, 'parentId'],
    reason:
      'Followed from parent to parent this branch never reaches the trunk: it grows in a circle from itself. Name the branch it really grows from.',
  };
}
