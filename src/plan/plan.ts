/** A plan: a cut list with its score, and "do nothing" beside it. */
import type { IsoDate } from '../season/site.ts';
import type { ChoicePoint } from './choice.ts';
import type { Cut } from './cut.ts';
import type { PinchAdvice } from './pinchPlan.ts';
import type { RenewalWay } from './renewal.ts';
import type { Score } from './score.ts';
import type { SearchRecord } from './searchRecord.ts';
import type { WorkStep } from './steps.ts';
import type { Confidence } from './worlds/standsIn.ts';

export interface Plan {
  readonly date: IsoDate;
  /** In the order of work: dead and sick wood, suckers, crossing, inward, narrow forks, crowding, tips. */
  readonly cuts: readonly Cut[];
  /** Right in too few worlds to be advised: what they would bring beside the plan. No figure of the plan counts them. */
  readonly yourCall: readonly Cut[];
  /** How sure the plan is; null where no worlds were asked for. */
  readonly confidence: Confidence | null;
  /** The light scored again after each step of the work. */
  readonly steps: readonly WorkStep[];
  /** For early summer, of all shoots that stay; null where no pinch brings more. */
  readonly pinch: PinchAdvice | null;
  /** How the growth to keep was sought. */
  readonly search: SearchRecord;
  /** Only when asked for: ways to renew the tree, none where it has neither a strong sucker nor three limbs. */
  readonly renewal?: readonly RenewalWay[];
  /** What each number of shoots would bring, fewest first, on the canopy of the balanced plan; empty where nothing is to choose. */
  readonly choice: readonly ChoicePoint[];
  readonly score: {
    readonly doNothing: Score;
    readonly plan: Score;
    /** With all that is the grower's call done, too; null where nothing is. */
    readonly withYourCall: Score | null;
  };
  /** Things the grower should know that are no cut, as plain sentences. */
  readonly remarks: readonly string[];
}
