/** Why the search took what it took, as data. */
import type { FigValues } from '../species/fig.ts';
import type { Candidate } from './candidates.ts';
import { tooClose } from './candidates.ts';
import type { Reason } from './cut.ts';
import type { CutEffect } from './gains.ts';

/** Crowding always, with its figures; and for a bud the limit that would be broken were it kept, when there is one. */
export function searchReasons(
  candidate: Candidate,
  kept: readonly Candidate[],
  { ownShare, figsIfKept, figsForOthers, figsByShade }: CutEffect,
  values: FigValues,
): Reason[] {
  const figsWanted = values.keptShootUpkeepFigs;
  const reasons: Reason[] = [
    { rule: 'crowding', ownShare, figsIfKept, figsForOthers, figsByShade, figsWanted },
  ];
  if (candidate.bud === null) return reasons;
  const gapM = (other: Candidate): number => Math.abs(other.atM - candidate.atM);
  const [neighbour] = kept
    .filter((other) => tooClose(candidate, other, values.keptShootSpacingCm / 100))
    .sort((a, b) => gapM(a) - gapM(b));
  if (neighbour !== undefined) {
    reasons.push({ rule: 'pair', other: nameOf(neighbour), gapM: gapM(neighbour) });
  }
  const { limb } = candidate;
  const onLimb = kept.filter((other) => limb !== null && other.limb?.axis.id === limb.axis.id).length;
  if (limb !== null && onLimb >= candidate.limbHolds) {
    reasons.push({ rule: 'limb full', limb: limb.axis.name, kept: onLimb, limit: candidate.limbHolds });
  }
  return reasons;
}

const nameOf = ({ bud, axis }: Candidate): string =>
  bud === null ? axis.axis.name : `the next bud on ${axis.axis.name}`;
