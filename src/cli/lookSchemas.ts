/** The shapes of the JSON answers of `day` and `sky`, version 1: `src/engine/look.ts` has them as types. */
import * as z from 'zod';
import { energy, leafSeason } from './outputSchemas.ts';

const hours = z.number().min(0).max(24);
const par = z.number().min(0);
const share = z.number().min(0).max(1);
const sunlit = z.array(share).describe('Share in direct sun, per step.');
const parOfSteps = z.array(par).describe('PAR, mol m-2 in the step, per step.');
const node = z.int().min(1).describe('1 at the base of the shoot.');

export const dayReportSchema = z
  .strictObject({
    format: z.literal('boughlight-day'),
    version: z.literal(1),
    date: z.iso.date().describe('YYYY-MM-DD'),
    weather: z.enum(['normal', 'clear']),
    energy: energy.optional(),
    leafSeason: leafSeason.optional(),
    timeZone: z.string().describe('IANA name; of the clock times.'),
    seed: z.int().min(0),
    dayLengthH: hours.describe('From the rise to the set of the sun’s centre.'),
    openParMolM2Day: par.describe('PAR of the day under open sky, mol m-2.'),
    steps: z
      .array(
        z.strictObject({
          solarHour: z.number().min(0).max(24).describe('Of its middle: the sun stands highest at 12.'),
          clock: z.string().describe('The same by the clock of the place, HH:MM.'),
          instantMs: z.number().describe('The same in milliseconds since 1970, universal time.'),
          bearingDeg: z.number().min(0).max(360).describe('Of the sun, clockwise from north.'),
          altitudeDeg: z.number().min(-90).max(90).describe('Of the sun, true.'),
          sunHours: hours.describe(
            'How long the sun is up in the step: a sixth of an hour, less at its rise and set.',
          ),
          openParMolM2: par.describe('PAR under open sky, mol m-2 in the step.'),
        }),
      )
      .describe('Ten minutes of solar time each, those in which the sun is up.'),
    shoots: z.array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        sunHours: hours.describe('Hours of direct sun, mean of its nodes.'),
        parMolM2Day: par.describe('PAR of the day, mol m-2, mean of its nodes.'),
        sunlit,
        parMolM2: parOfSteps,
      }),
    ),
    nodes: z
      .array(
        z.strictObject({
          shootId: z.string(),
          node,
          sunHours: hours,
          parMolM2Day: par,
          sunlit,
          parMolM2: parOfSteps,
        }),
      )
      .optional()
      .describe('Only with --nodes.'),
  })
  .meta({ $id: 'urn:boughlight:schema:boughlight-day:1', title: 'Boughlight: the sun of one day' });

const skyShares = z.strictObject({
  solidAngle: share.describe('Every part of the half sphere alike.'),
  cosine: share.describe('As a level sensor sees it: each part by the sine of its altitude.'),
});

export const skyReportSchema = z
  .strictObject({
    format: z.literal('boughlight-sky'),
    version: z.literal(1),
    shootId: z.string(),
    name: z.string(),
    node,
    point: z.array(z.number()).length(3).describe('Of the node: metres east, up and south.'),
    size: z.int().min(2).describe('Dots of the picture each way.'),
    things: z
      .array(
        z.strictObject({
          kind: z.string().describe('sky, leaf, wood, or what stands around the tree.'),
          id: z.string().optional().describe('Of the shoot or branch.'),
          name: z.string().optional(),
        }),
      )
      .describe('The first is the open sky.'),
    first: z
      .array(z.int().min(-1))
      .describe(
        'Per dot, row by row from the north, each from the west: index of the thing met first; -1 outside the circle. Equidistant zenith projection: the zenith in the middle, the horizon the rim, north at the top, east on the right.',
      ),
    passed: z.array(share).describe('Per dot: share of the light that gets through.'),
    open: skyShares.describe('Share of the sky with nothing before it.'),
    light: skyShares.describe('The same with what leaves let through and scatter on.'),
  })
  .meta({ $id: 'urn:boughlight:schema:boughlight-sky:1', title: 'Boughlight: the sky from a node' });
