/** The shape of the exported scene, version 1: `src/document/scene/sceneFile.ts` has it as a type. */
import * as z from 'zod';
import { energy } from './outputSchemas.ts';

const date = z.iso.date().describe('YYYY-MM-DD');
const numbers3 = z.array(z.number()).length(3);
const share = z.number().min(0).max(1);

export const sceneSchema = z
  .strictObject({
    format: z.literal('boughlight-scene'),
    version: z.literal(1),
    frame: z
      .strictObject({
        x: z.literal('east'),
        y: z.literal('up'),
        z: z.literal('south'),
        unit: z.literal('m'),
      })
      .describe('Right-handed; metres.'),
    period: z.strictObject({ from: date, to: date }).describe('First and last day, both included.'),
    seed: z.int().min(0),
    openSkyParMolM2Day: z.number().min(0).describe('PAR, mol m-2 d-1, mean of the days.'),
    energy: energy.optional(),
    recipe: z.string().describe('How every share is found from the rest, in words.'),
    surfaces: z.array(
      z.strictObject({
        owner: z.string().nullable().describe('Id of the axis or bud; null for what no cut takes away.'),
        material: z.strictObject({
          kind: z.enum(['leaf', 'wood', 'surroundings', 'crown']),
          transmittance: share.describe('Share of the light that passes at each triangle that is crossed.'),
          reflectance: share.describe('Share thrown back; told, not used in the shares.'),
          extinctionPerM: z
            .number()
            .min(0)
            .optional()
            .describe('Of a crown: exp(-extinctionPerM x metres inside the closed surface) passes.'),
        }),
        triangles: z.array(z.array(numbers3).length(3)).describe('Both sides count.'),
      }),
    ),
    receivers: z.array(
      z.strictObject({
        shoot: z.string(),
        node: z.int().min(1).describe('1 at the base of the shoot.'),
        point: numbers3,
        normal: numbers3,
        leaveOut: z
          .int()
          .min(0)
          .nullable()
          .describe('Index of the surface that never shades it: its own leaf, in whose plane it lies.'),
      }),
    ),
    directions: z.array(
      z.strictObject({
        wave: z.int().min(0).describe('Waves are independent samples; all together make the day.'),
        toSky: numbers3.describe('Unit vector.'),
        beamParMolM2: z
          .number()
          .min(0)
          .describe('What a sensor square to it gets a day from the sun, PAR, mol m-2, mean of the period.'),
        skyParMolM2: z.number().min(0).describe('The same from the sky.'),
      }),
    ),
    result: z.array(
      z.strictObject({
        shoot: z.string(),
        lightFraction: z.number().min(0),
        standardError: z.number().min(0),
      }),
    ),
    thrown: z
      .strictObject({
        recipe: z.string(),
        patches: z.array(
          z.strictObject({
            surface: z.int().min(0).describe('Index among the surfaces.'),
            reflectance: share,
            normal: numbers3,
            corners: z.array(numbers3).min(3).max(4),
          }),
        ),
        directions: z.array(
          z.strictObject({
            wave: z.int().min(0),
            toSky: numbers3,
            patch: z.int().min(0),
            parMolM2: z.number().min(0).describe('Brought by a ray that meets the front of the patch.'),
          }),
        ),
        result: z.array(z.strictObject({ shoot: z.string(), lightFraction: z.number() })),
      })
      .optional()
      .describe('Light that walls throw back, on top of the rest of the file, in which they are dark.'),
  })
  .meta({ $id: 'urn:boughlight:schema:boughlight-scene:1', title: 'Boughlight: the traced scene' });
