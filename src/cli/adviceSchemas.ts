/** The shapes of advice beside the cut list: pinching and renewal. */
import * as z from 'zod';
import { date, span } from './spanSchema.ts';

const harvest = z.strictObject({
  ripeFigs: z.number().min(0).describe('Main crop figs that ripen.'),
  inGoodWeeks: z.number().min(0).describe('Those of warm, dry weeks.'),
  peakFrom: date.nullable().describe('First day of the week with most figs; null where none ripen.'),
});

export const pinch = z.strictObject({
  what: z.string().describe('What is done and what it brings, in words.'),
  atLeaf: z.int().min(1).describe('The tip goes just above this leaf, 1 at the base.'),
  laterals: z.enum(['keep one', 'rub off all']).describe('Of the shoots that break below the pinch.'),
  when: span,
  without: harvest,
  with: harvest,
  weeks: z
    .array(
      z.strictObject({
        from: date,
        isGood: z.boolean().describe('Whether the week is warm and dry in a normal year.'),
        without: z.number().min(0).describe('Figs that ripen without the pinch.'),
        with: z.number().min(0),
      }),
    )
    .describe('Weeks in which figs ripen.'),
});

export const renewal = z.strictObject({
  way: z.enum(['to a sucker', 'a third a year']),
  sucker: z.string().nullable().describe('Name of the sucker that becomes the tree.'),
  what: z.string().describe('What is done, in words.'),
  when: span.describe('First winter window; those of later years fall on the same days.'),
  ripeFigsNow: z.number().min(0).describe('Of a year, with nothing done.'),
  years: z.array(
    z.strictObject({
      year: z.int().min(1).describe('1 for the season after the first cuts.'),
      cuts: z
        .array(
          z.strictObject({
            kind: z.string(),
            target: z.string().describe('Id of the axis.'),
            atM: z
              .number()
              .min(0)
              .describe('Along the target from its base to the cut, metres; 0 takes it whole.'),
            what: z.string(),
            where: z.string(),
            caution: z.string(),
          }),
        )
        .describe('Made in the winter before.'),
      ripeFigs: z
        .strictObject({ low: z.number().min(0), high: z.number().min(0) })
        .describe('New wood bears again in the third season after its cut (low), or in the second (high).'),
    }),
  ),
});
