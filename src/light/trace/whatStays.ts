/** Owners and receivers of a scene that are as they were before it changed. */
import type { Receiver, Surface } from '../../geometry/surface.ts';
import type { SceneChange } from './change.ts';

function countByOwner(surfaces: readonly Surface[], count: number): Int32Array {
  const counts = new Int32Array(count);
  for (const { owner } of surfaces) counts[owner] = (counts[owner] as number) + 1;
  return counts;
}

export interface OwnerChange {
  /** Per owner before: its number after where all its surfaces stand as they did, else -1. */
  readonly stays: Int32Array;
  /** Per owner after: 1 where some surface of its is new or gone. */
  readonly isTouched: Uint8Array;
}

export function compareOwners(
  before: readonly Surface[],
  surfaces: readonly Surface[],
  ownerCount: number,
  { surfaceBefore, ownerAfter }: SceneChange,
): OwnerChange {
  const had = countByOwner(before, ownerAfter.length);
  const has = countByOwner(surfaces, ownerCount);
  const same = countByOwner(
    surfaces.filter((_, i) => (surfaceBefore[i] as number) >= 0),
    ownerCount,
  );
  const isTouched = has.map((count, owner) => (count === same[owner] ? 0 : 1));
  const stays = ownerAfter.map((after, owner) => {
    if (after < 0) return -1;
    if (same[after] === had[owner] && isTouched[after] === 0) return after;
    isTouched[after] = 1;
    return -1;
  });
  return { stays, isTouched: Uint8Array.from(isTouched) };
}

/** Per receiver after: its index before, -1 where it is new, has moved or lies on something that has. */
export function receiversBefore(
  before: readonly Receiver[],
  after: readonly Receiver[],
  { surfaceBefore }: SceneChange,
): Int32Array {
  const isSame = (was: Receiver | undefined, is: Receiver): boolean => {
    if (was === undefined || was.sides !== is.sides) return false;
    const ground = is.onSurface < 0 ? -1 : surfaceBefore[is.onSurface];
    if (ground !== was.onSurface) return false;
    return ([0, 1, 2] as const).every((k) => was.point[k] === is.point[k] && was.normal[k] === is.normal[k]);
  };
  let byPlace: Map<string, number> | undefined;
  const find = (is: Receiver): number => {
    byPlace ??= new Map(before.map(({ point }, i) => [point.join(' '), i]));
    const found = byPlace.get(is.point.join(' ')) ?? -1;
    return isSame(before[found], is) ? found : -1;
  };
  let expected = 0;
  return Int32Array.from(after, (is) => {
    const was = isSame(before[expected], is) ? expected : find(is);
    expected = was < 0 ? expected + 1 : was + 1;
    return was;
  });
}
