/** How sure a plan is. */
import * as z from 'zod';

const count = z.int().min(0);

const range = z
  .strictObject({ low: z.number(), middle: z.number(), high: z.number() })
  .describe('A tenth of the worlds lie below low, half below middle, a tenth above high.');

export const standsIn = z
  .strictObject({
    worlds: count,
    stands: count.describe(
      'Worlds in which the plan is worth at least as much as without this cut; of a rule’s cut, in which the rule still asks for it.',
    ),
    rival: z
      .strictObject({
        target: z.string().describe('Id of the kept bud or shoot that might as well go in its place.'),
        branch: z.string().describe('Name of the branch the bud sits on, or of the shoot.'),
        atM: z.number().min(0).nullable().describe('Of a bud: metres along that branch.'),
        stands: count.describe('Worlds in which the plan is worth at least as much as with that exchange.'),
      })
      .nullable(),
  })
  .nullable()
  .optional()
  .describe(
    'In how many plausible trees and years the cut is right; null for what goes on sight or was marked, and where no worlds were asked for.',
  );

export const confidence = z
  .strictObject({
    worlds: count,
    yourCallBelowShare: z
      .number()
      .min(0)
      .max(1)
      .describe('Cuts that stand in a smaller share of the worlds are the grower’s call.'),
    figs: z
      .strictObject({
        plan: range,
        doNothing: range,
        difference: range.describe('World by world: with the plan less with nothing done.'),
        betterIn: count.describe('Worlds in which the plan ripens at least as many.'),
      })
      .nullable()
      .describe('Ripe figs of the main crop; the plan without what is the grower’s call.'),
  })
  .nullable()
  .optional()
  .describe('How sure the plan is; null where no worlds were asked for.');
