/** How a plan's growth to keep was sought, and what it was chosen from. */
import * as z from 'zod';

export const searchRecord = z.strictObject({
  candidates: z.number().int().min(0).describe('Buds and shoots that the search was free to take.'),
  value: z
    .number()
    .nullable()
    .describe(
      'Worth of what is kept, in figs, on the canopy that it was sought on; null where there was nothing to choose.',
    ),
  bound: z
    .number()
    .nullable()
    .describe('No set is worth more there; null where there was nothing to choose.'),
  gap: z
    .number()
    .min(0)
    .nullable()
    .describe(
      'Share of that bound by which the set may fall short: 0 where none is better; a wide one may be far off. Null where there was nothing to choose.',
    ),
  evaluations: z.number().int().min(0).describe('Sets scored.'),
  rounds: z
    .number()
    .int()
    .min(0)
    .describe('Times that growth was sought, each on the canopy regrown for the set before; at most four.'),
  agreed: z
    .boolean()
    .describe(
      'Whether the set found last is the one that its canopy was grown for; else the set that is worth most on its own canopy was taken.',
    ),
});

export const choicePoint = z.strictObject({
  shoots: z.number().int().min(0),
  ripeFigs: z.number().describe('Main crop, on the rays of the search and the canopy of the balanced plan.'),
  meanLight: z.number().min(0).describe('Mean over shoots of their share of open sky, days at full leaf.'),
  deepShade: z.number().int().min(0).describe('Shoots below half of fruiting light.'),
  withinLimits: z.boolean().describe('Whether the hard limits hold as in the balanced plan.'),
  reads: z.array(z.enum(['gentle', 'balanced', 'bold'])).describe('Plans read at this point.'),
});
