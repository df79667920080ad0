/** What if only these cuts of a plan were made? */

import { within } from '../plan/errand.ts';
import { cutEnds, goneIds } from '../plan/gone.ts';
import { grows, untracedSeason } from '../plan/tracedSeason.ts';
import { traceUpTo } from '../plan/traceUpTo.ts';
import { type TrialContext, trialContext, tryCuts } from '../plan/trial.ts';
import { workYear } from '../plan/windows.ts';
import type { Trial } from './engine.ts';
import type { Job } from './job.ts';

/**
 * Answers twice. At once, as `partial`, from the rays already traced, with every shoot as strong as the plan makes it;
 * then from a canopy regrown for just these cuts, since fewer buds rubbed off leave the others weaker. Where
 * nothing regrows (no buds, or the plan as it is) the first answer is the last.
 */
export function* trialJob(context: TrialContext, cutIds: readonly string[]): Job<Trial, Trial> {
  const quick = tryCuts(context, cutIds);
  yield { done: 0.1, doing: 'Scoring these cuts', partial: quick };
  const { input, cuts, planned, seasonYear } = context;
  const isPlan = cutIds.length === planned.length && planned.every(({ id }) => cutIds.includes(id));
  if (!grows(input) || isPlan) return quick;
  const { season } = workYear(input);
  const made = cuts.filter(({ id }) => cutIds.includes(id));
  const regrown = untracedSeason(input, season, goneIds(input.tree, made), cutEnds(cuts));
  const steps = traceUpTo(input.waves, regrown, input);
  const traced = yield* within(steps, 0.1, 1);
  return tryCuts(trialContext(traced, made, input, seasonYear), cutIds);
}
