/** What each boldness takes, so that one asked for later takes just what was offered. */
import type { Candidate } from './candidates.ts';
import type { Boldness } from './choice.ts';

/** Ids taken, by boldness, of just these candidates. */
export interface Offered {
  readonly of: readonly string[];
  readonly settled: ReadonlySet<string>;
  readonly taken: Readonly<Record<Boldness, ReadonlySet<string>>>;
}

export function offeredFrom(
  candidates: readonly Candidate[],
  settled: ReadonlySet<string>,
  kept: Readonly<Record<Boldness, ArrayLike<number>>>,
): Offered {
  const ids = candidates.map(({ id }) => id);
  const takenBy = (name: Boldness): ReadonlySet<string> => new Set(ids.filter((_, i) => kept[name][i] === 0));
  const taken = { gentle: takenBy('gentle'), balanced: takenBy('balanced'), bold: takenBy('bold') };
  return { of: ids, settled, taken };
}

/** What was offered, where it was for the same growth with the same work settled. */
export function offeredFor(
  candidates: readonly Candidate[],
  settled: ReadonlySet<string>,
  offered: Offered | null,
): Offered | null {
  if (offered === null || offered.of.length !== candidates.length) return null;
  const isSame =
    offered.settled.size === settled.size &&
    [...settled].every((id) => offered.settled.has(id)) &&
    candidates.every(({ id }, i) => id === offered.of[i]);
  return isSame ? offered : null;
}
