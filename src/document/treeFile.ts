/**
 * The tree file, version 1: the one source of truth for its shape. The JSON Schema in
 * `public/schema/` is generated from here. Lengths are metres, angles degrees, shares 0 to 1.
 */
import * as z from 'zod';

// No code is made at run time, so that the page's content security policy can forbid it.
z.config({ jitless: true });

export const formatName = 'boughlight-tree';
export const currentVersion = 1;

const name = z.string().min(1).max(200);
const note = z.string().max(10_000);
const id = z
  .string()
  .regex(/^[a-z0-9][a-z0-9._-]{0,63}$/, 'small letters, digits, dot, dash and underscore, at most 64');
const coordinate = z.number().min(-100).max(100);
const point = z.tuple([coordinate, coordinate, coordinate]).describe('Metres east, up and south.');
const plan = z.tuple([coordinate, coordinate]).describe('Metres east and north of the foot of the site.');
const share = z.number().min(0).max(1);
const bearing = z.number().min(0).max(360).describe('Degrees clockwise from north.');
const isoDate = z.iso.date().describe('YYYY-MM-DD');
const dayOfYear = z.string().regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$/, 'MM-DD');

const monthlyOf = (n: z.ZodNumber) =>
  z.tuple([n, n, n, n, n, n, n, n, n, n, n, n]).describe('January to December.');

const hoursOfMonths = z.array(z.array(z.number().min(0).max(1500)).length(24)).length(12);
const hourly = z
  .strictObject({
    source: name.describe('What the figures were taken from.'),
    globalWM2: hoursOfMonths,
    diffuseWM2: hoursOfMonths.describe('From the sky alone, without the straight beam.'),
  })
  .describe(
    'Radiation on the level, W m-2: twelve months of 24 hours of true solar time (the sun stands highest at 12), means of the days. It rules over clearness and sunshine.',
  );

const climate = z.strictObject({
  source: z.enum(['measured', 'published', 'guess']),
  meanC: monthlyOf(z.number().min(-60).max(50)),
  minC: monthlyOf(z.number().min(-70).max(45)),
  sunshineH: monthlyOf(z.number().min(0).max(24))
    .describe('Bright sunshine, hours a day. Needed where clearness is not given.')
    .optional(),
  clearness: monthlyOf(z.number().min(0.15).max(0.8))
    .describe(
      'Share of the radiation above the air that reaches the ground. Where it is known it rules over the sunshine hours.',
    )
    .optional(),
  hourly: hourly.optional(),
});

const pin = z.enum(['keep', 'remove']).nullable().default(null);

const bud = z.strictObject({
  id,
  atM: z.number().min(0).max(50),
  aroundDeg: z
    .number()
    .min(0)
    .max(360)
    .describe('0 the upper side (north on upright wood), clockwise seen from the tip.'),
  pin,
});

const axis = z.strictObject({
  id,
  name,
  kind: z.enum(['trunk', 'scaffold', 'lateral', 'shoot', 'sucker']),
  parentId: id.nullable(),
  atM: z.number().min(0).max(50).describe('Distance of the base along the parent.'),
  path: z.array(point).min(2).max(200).describe('Offsets in world axes from the point atM on the parent.'),
  baseDiameterM: z.number().min(0.0002).max(2),
  tipDiameterM: z.number().min(0.0002).max(2),
  grownIn: z.int().min(1800).max(2200),
  condition: z.enum(['live', 'dead', 'diseased', 'damaged']).default('live'),
  buds: z.array(bud).max(500).default([]),
  foliage: z
    .strictObject({
      count: z.int().min(0).max(200),
      midribM: z.number().min(0.01).max(0.6),
      source: z
        .enum(['measured', 'estimated'])
        .describe('Of the count. What was measured is never estimated anew.'),
      midribSource: z
        .enum(['measured', 'estimated'])
        .describe('Of the midrib. Left out: the same as of the count.')
        .optional(),
    })
    .nullable()
    .default(null),
  bearsFigs: z
    .boolean()
    .describe('Whether it carried figs on the day of the sketch. Left out: nothing is told of it.')
    .optional(),
  pin,
});

const surrounding = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('wall'),
    name,
    from: plan,
    to: plan,
    heightM: z.number().min(0.01).max(50),
    thicknessM: z.number().min(0.005).max(5),
    reflectance: share,
  }),
  z.strictObject({
    kind: z.literal('box'),
    name,
    centre: plan,
    sizeM: z
      .tuple([z.number().min(0.01).max(100), z.number().min(0.01).max(100), z.number().min(0.01).max(50)])
      .describe('East-west, north-south, height.'),
    turnedDeg: bearing,
    reflectance: share,
    ridgeHeightM: z
      .number()
      .min(0.01)
      .max(60)
      .describe('Height of the ridge of a gabled roof above the ground; it runs along the first size.')
      .optional(),
  }),
  z.strictObject({
    kind: z.literal('fence'),
    name,
    from: plan,
    to: plan,
    heightM: z.number().min(0.01).max(50),
    thicknessM: z.number().min(0.005).max(1),
    openFraction: share.describe('Share of light that passes square on.'),
  }),
  z.strictObject({
    kind: z.literal('hedge'),
    name,
    from: plan,
    to: plan,
    heightM: z.number().min(0.01).max(50),
    thicknessM: z.number().min(0.05).max(30),
    leafAreaDensityM2M3: z.number().min(0).max(20),
  }),
  z.strictObject({
    kind: z.literal('crown'),
    name,
    centre: plan,
    centreHeightM: z.number().min(0).max(50),
    halfSizeM: z
      .tuple([z.number().min(0.05).max(30), z.number().min(0.05).max(30), z.number().min(0.05).max(30)])
      .describe('Half its size east-west, north-south, up-down.'),
    leafAreaDensityM2M3: z.number().min(0).max(20),
  }),
]);

const skyline = z
  .strictObject({
    reflectance: share.describe('It is as bright as level ground of this reflectance.'),
    points: z
      .array(z.strictObject({ bearingDeg: bearing, heightDeg: z.number().min(0).max(85) }))
      .min(1)
      .max(360)
      .describe('Angle of the skyline above the level, seen from the tree; straight between bearings.'),
  })
  .describe('Hills, woods and houses far off, as measured.');

const slope = z.strictObject({
  slopeDeg: z.number().min(0).max(60),
  fallsToDeg: bearing.describe('The way water runs. Degrees clockwise from north.'),
});

const cover = z
  .strictObject({
    name,
    passedFraction: share.describe('Share of PAR that passes.'),
    diffusingFraction: share.describe('Share of the sunbeams passed that comes down as light of the sky.'),
    dates: z
      .strictObject({ from: dayOfYear, until: dayOfYear })
      .nullable()
      .describe('First and last day on which it hangs, in every year; null all year.'),
  })
  .describe('Film or net above the whole place.');

export const treeFileSchema = z.strictObject({
  $schema: z.string().max(200).optional(),
  format: z.literal(formatName),
  version: z.literal(currentVersion),
  id,
  name,
  note: note.default(''),
  species: z.enum(['fig']),
  cultivar: z.strictObject({
    name: z.string().max(200).default(''),
    ripening: z.enum(['early', 'mid', 'late']),
    bearsFirstCrop: z.boolean(),
  }),
  site: z.strictObject({
    name,
    latitudeDeg: z.number().min(-66).max(66),
    longitudeDeg: z.number().min(-180).max(180),
    timeZone: z.string().min(1).max(64).describe('IANA name, such as Europe/Paris.'),
    elevationM: z.number().min(-430).max(5000),
    groundReflectance: share,
    /** Where the grower looks from when the plan says left and right. */
    viewpoint: z.strictObject({ name, bearingDeg: bearing }).nullable().default(null),
    climate,
    frost: z.strictObject({ lastOfSpring: dayOfYear, firstOfAutumn: dayOfYear }).nullable(),
    surroundings: z.array(surrounding).max(100).default([]),
    wallsThrowLight: z
      .boolean()
      .describe('Whether walls and boxes throw light back, by their reflectance. Left out: they are dark.')
      .optional(),
    skyline: skyline.optional(),
    slope: slope.describe('Of the ground. Heights are still measured from the level.').optional(),
    cover: cover.optional(),
  }),
  standing: z.strictObject({
    /** Null for a tree in the ground. */
    pot: z
      .strictObject({
        topDiameterM: z.number().min(0.05).max(3),
        baseDiameterM: z.number().min(0.05).max(3),
        heightM: z.number().min(0.05).max(2),
        soilBelowRimM: z.number().min(0).max(0.5),
      })
      .nullable(),
    at: plan,
    turnedDeg: bearing.describe('How far the pot has been turned clockwise since the tree was sketched.'),
    quarterTurnEveryWeeks: z
      .int()
      .min(1)
      .max(26)
      .describe('From bud break on it is turned by 90 degrees clockwise after every so many weeks.')
      .optional(),
  }),
  season: z.strictObject({ budBreakOn: isoDate, sketchedOn: isoDate }),
  /** Parameters of the species that the grower has set, by their names in the species file. */
  settings: z.record(z.string().max(64), z.number()).default({}),
  axes: z.array(axis).min(1).max(5000),
  /** Kept as it is on every round trip; for other programs. */
  ext: z.record(z.string().max(64), z.json()).optional(),
});

/** A whole tree file in memory. */
export type TreeFile = z.infer<typeof treeFileSchema>;
export type Surrounding = TreeFile['site']['surroundings'][number];
