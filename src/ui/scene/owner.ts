import type { Canopy } from '../../growth/canopy.ts';

/** Owner number of an id; 0 when the canopy has none of it. */
export function ownerOf(canopy: Canopy, id: string | null): number {
  if (id === null) return 0;
  return Math.max(
    0,
    canopy.owners.findIndex((owner) => owner !== null && owner.id === id),
  );
}

/** Per owner of the canopy, 1 for those with one of these ids. */
export const ownersIn = (canopy: Canopy, ids: ReadonlySet<string>): Uint8Array =>
  Uint8Array.from(canopy.owners, (owner) => (owner !== null && ids.has(owner.id) ? 1 : 0));
