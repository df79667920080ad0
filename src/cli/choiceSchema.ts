/** How a plan's growth to keep was sought, and what it was chosen from. */
import * as z from 'zod';

export const searchRecord = z.strictObject({
  candidates: z.number().int().min(0).describe('Buds and shoots that the search was free to take.'),
  value: z
    .number()
    .nullable()
    .describe(
      'Worth of what is kept, in figs, on the canopy that it was sought on, without what broken limits cost it in the search; null where there was nothing to choose.',
    ),
  bound: z
    .number()
    .nullable()
    .describe(
      'No set that breaks no more limits is worth more there; null where there was nothing to choose.',
    ),
  gap: z
    .number()
    .min(0)
    .nullable()
    .describe(
      'Share of that bound by which the set may fall short: 0 where none is better; a wide one may be far off. Null where there was nothing to choose.',
    ),
  broken: z
    .strictObject({
      shareOver: z.number().min(0).describe('Share of the year’s leaf area beyond what may be taken.'),
      bareBranches: z.int().min(0).describe('Branches left without a shoot of those they had.'),
      bareBases: z.int().min(0).describe('Limbs left without a shoot near their base.'),
      overFull: z.int().min(0).describe('Shoots beyond what the limbs carry well.'),
      leadingBudsGone: z.int().min(0).describe('Branches that lose their end bud.'),
      leadingShootsGone: z.int().min(0).describe('Branches in leaf that lose the shoot at their end.'),
      tooClosePairs: z.int().min(0).describe('Pairs of kept shoots too close on one side.'),
    })
    .nullable()
    .optional()
    .describe('Limits that what is kept breaks; null where there was nothing to choose.'),
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
