/** Why the search took what it took, as data. */
import type { FigValues } from '../species/fig.ts';
import type { Candidate } from './candidates.ts';
import { tooClose } from './candidates.ts';
import type { Reason } from './cut.ts';
import type { CutEffect } from './gains.ts';

/**
 * Crowding always, with its figures; and for a bud the limits that would be broken were it kept. They come first where the bud would be
 * worth keeping without them.
 */
export function searchReasons(
  candidate: Candidate,
  kept: readonly Candidate[],
  { ownShare, figsIfKept, figsForOthers, figsByShade }: CutEffect,
  values: FigValues,
): Reason[] {
  const figsWanted = values.keptShootUpkeepFigs;
  const crowding: Reason = { rule: 'crowding', ownShare, figsIfKept, figsForOthers, figsByShade, figsWanted };
  const broken = limitsBroken(candidate, kept, values);
  return figsIfKept - figsForOthers >= figsWanted ? [...broken, crowding] : [crowding, ...broken];
}

function limitsBroken(candidate: Candidate, kept: readonly Candidate[], values: FigValues): Reason[] {
  if (candidate.bud === null) return [];
  const reasons: Reason[] = [];
  const wantedM = values.keptShootSpacingCm / 100;
  const gapM = (other: Candidate): number => Math.abs(other.atM - candidate.atM);
  const [neighbour] = kept
    .filter((other) => tooClose(candidate, other, wantedM))
    .sort((a, b) => gapM(a) - gapM(b));
  if (neighbour !== undefined) {
    reasons.push({ rule: 'pair', other: nameOf(neighbour), gapM: gapM(neighbour), wantedM });
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
