/** What a rule found. */
import type { CutKind, Reason } from './cut.ts';

export interface Finding {
  readonly kind: CutKind;
  /** Id of the axis or bud. */
  readonly target: string;
  /** Along the target axis from its base to the cut, metres: 0 takes it off whole. */
  readonly atM: number;
  readonly reason: Reason;
  /** False: no cut is proposed, the grower is told of it. */
  readonly isCut: boolean;
}
