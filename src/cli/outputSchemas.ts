/**
 * The shapes of the JSON answers, version 1. The JSON Schemas in `public/schema/` are generated from here,
 * and the types of what the command writes are taken from here.
 */
import * as z from 'zod';
import { pinch, renewal } from './adviceSchemas.ts';
import { choicePoint, searchRecord } from './choiceSchema.ts';
import { confidence, standsIn } from './confidenceSchema.ts';
import { date, span } from './spanSchema.ts';

const parMolM2Day = z.number().min(0).describe('PAR, mol m-2 d-1, mean of the days.');
const lightFraction = z
  .number()
  .min(0)
  .describe('Share of open sky on a level sensor; above 1 only by its error.');

const part = z.number().min(0);
const lightParts = z.strictObject({
  beam: part.describe('Straight from the sun, through no leaf of the tree.'),
  sky: part.describe('Straight from the sky.'),
  ground: part.describe('Straight from the ground.'),
  transmitted: part.describe('From all three, through one leaf or more.'),
  scattered: part.describe('Thrown on by leaves.'),
});

const skyShares = z.strictObject({
  solidAngle: part.describe('Every part of the half sphere alike.'),
  cosine: part.describe('As a level sensor sees it: each part by the sine of its altitude.'),
});

const nodeOfShoot = {
  shootId: z.string(),
  node: z.int().min(1).describe('1 at the base of the shoot.'),
};
const sunHours = z.number().min(0).describe('Hours of direct sun on a mean day, clouds left out of account.');
const heightM = z.number().describe('Above the ground, metres; of a shoot the mean of its nodes.');
const openSky = skyShares.describe('Share of the sky that is seen with nothing before it.');
const solarHour = z
  .int()
  .min(0)
  .max(23)
  .describe('Beginning of an hour in solar time: the sun stands highest at 12.');

const threshold = z.strictObject({
  share: z.number().min(0).max(1).describe('Of open sky.'),
  source: z.string(),
  isSet: z.boolean().describe('Whether the grower has set another figure.'),
});

export const energy = z
  .strictObject({
    basis: z
      .enum(['hourly', 'clearness', 'sunshine', 'clear sky'])
      .describe('Mean hours of radiation, monthly clearness or sunshine, or the formula of a cloudless day.'),
    source: z
      .string()
      .describe('Name of the weather file or formula; of monthly figures measured, published or guess.'),
  })
  .describe('What the light was made from.');

export const leafSeason = z
  .strictObject({
    from: z.iso.date(),
    to: z.iso.date(),
    daysOutside: z.int().min(0).describe('Days of the period on which the tree has no leaves.'),
  })
  .describe('When the tree is in leaf; its light is traced in full leaf whatever the day.');

export const lightReportSchema = z
  .strictObject({
    format: z.literal('boughlight-light'),
    version: z.literal(1),
    period: span,
    weather: z.enum(['normal', 'clear']).describe('Of every day of the period.'),
    sky: z
      .union([z.enum(['uniform', 'overcast', 'clear', 'all-weather']), z.int().min(1).max(15)])
      .describe(
        'How the light of the sky lies over it; a number is that of the CIE sky (ISO 15469), all-weather goes with the light of each hour.',
      ),
    solarHour: solarHour
      .nullable()
      .optional()
      .describe('The one hour of each day, in solar time, that was asked for; null for the whole days.'),
    energy: energy.optional(),
    leafSeason: leafSeason.optional(),
    parFactor: z
      .strictObject({ molPerMJ: z.number(), low: z.number(), high: z.number() })
      .optional()
      .describe(
        'PAR of the radiation, mol per MJ of all wavelengths, and between what limits that is in print.',
      ),
    openSkyParMolM2Day: parMolM2Day,
    dayLengthH: z
      .number()
      .min(0)
      .max(24)
      .optional()
      .describe('From the rise to the set of the sun’s centre, mean of the days.'),
    thresholds: z
      .strictObject({
        deepShade: threshold.describe('Below it a shoot sits in deep shade.'),
        fruitingLight: threshold.describe('Below it a shoot is not expected to set fruit.'),
        saturation: threshold.describe('Above it more light adds little to a leaf.'),
      })
      .optional(),
    seed: z.int().min(0),
    rays: z.int().min(0).describe('Rays traced for the answer.'),
    shoots: z.array(
      z.strictObject({
        id: z.string().describe('Id of the axis, or of the bud it grows from.'),
        name: z.string(),
        lightFraction,
        standardError: z.number().min(0).describe('Of the sampling, in the unit of lightFraction.'),
        parMolM2Day,
        parts: lightParts.describe('By the way it came, as share of open sky; they add up to lightFraction.'),
        leafLightFraction: z
          .number()
          .min(0)
          .describe('Light on both faces of the leaves per one-sided leaf area, as share of open sky.'),
        leafParts: lightParts.describe('The same of leafLightFraction.'),
        byMonth: z.array(z.strictObject({ month: z.int().min(1).max(12), lightFraction, parMolM2Day })),
        byHour: z
          .array(
            z.strictObject({
              solarHour,
              lightFraction,
              parMolM2: z.number().min(0).describe('PAR in the hour, mol m-2, mean of the days.'),
            }),
          )
          .optional(),
        sunHours: sunHours.optional(),
        openSky: openSky.optional(),
        heightM: heightM.optional(),
      }),
    ),
    nodes: z
      .array(z.strictObject({ ...nodeOfShoot, share: lightFraction, sunHours, openSky, heightM }))
      .optional()
      .describe('Only with --nodes.'),
    leaves: z
      .array(
        z.strictObject({
          ...nodeOfShoot,
          share: z
            .number()
            .min(0)
            .describe('Light on both faces per one-sided leaf area, as share of open sky.'),
          standardError: z.number().min(0).describe('Of the sampling.'),
        }),
      )
      .optional()
      .describe('Only with --leaves.'),
  })
  .meta({ $id: 'urn:boughlight:schema:boughlight-light:1', title: 'Boughlight: light per shoot' });

const score = z.strictObject({
  ripeFigs: z.number().min(0).describe('Main crop figs expected to ripen this season.'),
  figsSet: z
    .number()
    .min(0)
    .describe('Main crop figs set: more than ripen where the season is short or the pot small.'),
  firstCropFigs: z.number().min(0).describe('Figs expected on last year’s wood.'),
  fruitingWoodM: z.number().min(0).describe('Shoot length in fruiting light, metres.'),
  shootCount: z.int().min(0),
  deepShadeCount: z.int().min(0).describe('Shoots below half of fruiting light.'),
  leafAreaM2: z.number().min(0),
  meanLight: z.number().min(0).describe('Mean over the shoots of their share of open sky.'),
});

const gain = z.strictObject({
  figs: z.number().describe('Ripe figs that this cut alone adds to the plan; may be below 0.'),
  fruitingWoodM: z
    .number()
    .describe('Metres of shoot in fruiting light that this cut alone adds to the plan.'),
  lights: z
    .array(z.strictObject({ id: z.string(), name: z.string(), shareGain: z.number() }))
    .max(3)
    .describe('Shoots that gain most, as change of their share of open sky.'),
});

const ifKept = z.strictObject({
  what: z.string().nullable().describe('In words; null where nothing changes.'),
  figs: z
    .number()
    .describe('Ripe figs of both crops that there are more when this one cut is not made; below 0: fewer.'),
  fallBelow: z
    .array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        share: z.number().min(0).describe('Of open sky, in the plan.'),
        shareIfKept: z.number().min(0),
        figsLost: z.number().describe('Figs that ripen on it in the plan and not with the piece kept.'),
      }),
    )
    .describe('Shoots of the plan that fall below fruiting light then.'),
});

const wind = z.enum([
  'north',
  'north-east',
  'east',
  'south-east',
  'south',
  'south-west',
  'west',
  'north-west',
]);

const place = z.strictObject({
  piece: z.string().nullable().describe('Name of what goes, when it has one of its own.'),
  branch: z.string().describe('Name of the branch to go to.'),
  branchSide: wind.describe('Of the branch as a whole, seen from the trunk.'),
  forksFrom: z.string().nullable().describe('Name of what the branch forks from; null for the trunk.'),
  face: z
    .enum([...wind.options, 'upper side', 'lower side'])
    .describe('Side of the branch on which the bud or base sits.'),
  fromForkM: z.number().describe('Along the branch from the fork where it begins to the cut, metres.'),
  heightM: z.number().describe('Height of the cut above the soil, metres.'),
  bearingDeg: z.number().describe('Direction of the cut from the trunk, degrees clockwise from north.'),
});

const cut = z.strictObject({
  id: z.string(),
  kind: z.enum(['rub off bud', 'remove', 'tip']),
  target: z.string().describe('Id of the axis or bud.'),
  atM: z.number().min(0).describe('Along the target from its base to the cut, metres; 0 takes it whole.'),
  what: z.string().describe('What is done, in words.'),
  where: z.string().describe('How to find it on the tree.'),
  reasons: z.array(z.string()),
  when: span,
  pass: z
    .union([z.literal(1), z.literal(2)])
    .nullable()
    .optional()
    .describe('Of buds rubbed off: 1 sure now, 2 look again two weeks later; null for other cuts.'),
  gain,
  ifKept: ifKept.optional().describe('The price of overruling the cut.'),
  standsIn,
  caution: z.string(),
  place,
  evidence: z.array(z.looseObject({ rule: z.string() })).describe('The reasons as data, in the same order.'),
});

export const planReportSchema = z
  .strictObject({
    format: z.literal('boughlight-plan'),
    version: z.literal(1),
    date,
    energy: energy.optional(),
    cuts: z.array(cut).describe('In the order of work.'),
    yourCall: z
      .array(cut)
      .optional()
      .describe('Right in too few worlds to be advised; no figure of the plan counts them.'),
    confidence,
    search: searchRecord.optional().describe('How the growth to keep was sought.'),
    choice: z
      .array(choicePoint)
      .optional()
      .describe('What each number of shoots kept would bring, fewest first.'),
    steps: z
      .array(
        z.strictObject({
          step: z.string(),
          cuts: z.int().min(0).describe('Of this step alone.'),
          ripeFigs: z.number().min(0),
          meanLight: z
            .number()
            .min(0)
            .describe('Mean over the shoots that stand of their share of open sky.'),
        }),
      )
      .optional()
      .describe(
        'What the plan’s own canopy is worth after each step of the work, with the cuts of the earlier steps made.',
      ),
    renewal: z
      .array(renewal)
      .optional()
      .describe('Only with --renewal: ways to renew an old tree; none where it has not what they need.'),
    pinch: pinch
      .nullable()
      .optional()
      .describe('Advice for early summer, for all shoots that stay; null where no pinch brings more.'),
    score: z.strictObject({
      doNothing: score,
      plan: score,
      withYourCall: score
        .nullable()
        .optional()
        .describe('With all that is the grower’s call done, too; null where nothing is.'),
    }),
    remarks: z.array(z.string()).describe('What the grower should know that is no cut.'),
  })
  .meta({ $id: 'urn:boughlight:schema:boughlight-plan:1', title: 'Boughlight: a cut list with its score' });

export type PlanReport = z.infer<typeof planReportSchema>;
