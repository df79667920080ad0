/** Cuts that are proposed, before their effect is known. */
import type { CutToMake } from './applyCuts.ts';
import type { Candidate } from './candidates.ts';
import type { Cut, Reason } from './cut.ts';
import type { Fault } from './faults.ts';

/** A cut before its effect is known. */
export interface Proposal extends CutToMake {
  readonly id: string;
  /** Set when the search took it. */
  readonly candidate: Candidate | null;
  readonly reasons: readonly Reason[];
}

/** Stable: made of kind and target. */
const cutId = (kind: Cut['kind'], target: string): string => `${kind.replaceAll(' ', '-')}:${target}`;

export const ofFault = ({ kind, target, atM, reasons }: Fault): Proposal => ({
  id: cutId(kind, target),
  kind,
  target,
  atM,
  candidate: null,
  reasons,
});

export const ofCandidate = (candidate: Candidate, reasons: readonly Reason[] | null): Proposal => ({
  id: cutId(candidate.kind, candidate.id),
  kind: candidate.kind,
  target: candidate.id,
  atM: 0,
  candidate: reasons === null ? candidate : null,
  reasons: reasons ?? [],
});
