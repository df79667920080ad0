import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { dayReportSchema, skyReportSchema } from '../../src/cli/lookSchemas.ts';
import { lightReportSchema, planReportSchema } from '../../src/cli/outputSchemas.ts';
import { sceneSchema } from '../../src/cli/sceneSchema.ts';
import { projectFolder } from '../house/source.ts';
import { madePlan } from './madePlan.ts';
import { answerOf, exampleText } from './stand.ts';

const published = [
  { name: 'boughlight-light-1', schema: lightReportSchema },
  { name: 'boughlight-day-1', schema: dayReportSchema },
  { name: 'boughlight-sky-1', schema: skyReportSchema },
  { name: 'boughlight-plan-1', schema: planReportSchema },
  { name: 'boughlight-scene-1', schema: sceneSchema },
] as const;

const pathOf = (name: string) => join(projectFolder, 'public', 'schema', `${name}.schema.json`);
const textOf = (schema: z.ZodType): string =>
  `${JSON.stringify(z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'output' }), null, 2)}\n`;

const readSchema = (name: string) => JSON.parse(readFileSync(pathOf(name), 'utf8')) as object;
const validatorOf = (name: string) =>
  new Ajv2020({ strict: true, validateFormats: false }).compile(readSchema(name));

describe('the published schemas of the answers', () => {
  it.each(published)(
    '$name is as the code has it (BOUGHLIGHT_WRITE=1 writes it anew)',
    ({ name, schema }) => {
      const text = textOf(schema);
      if (process.env.BOUGHLIGHT_WRITE === '1') writeFileSync(pathOf(name), text);
      expect(readFileSync(pathOf(name), 'utf8')).toBe(text);
    },
  );

  it.each(published)('$name has a name of its own and a title', ({ name }) => {
    expect(readSchema(name)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      $id: `urn:boughlight:schema:${name.replace(/-1$/, ':1')}`,
      title: expect.stringMatching(/^Boughlight: /),
      additionalProperties: false,
    });
  });

  it('take a plan as the command writes it', async () => {
    const files = { 'fig.json': exampleText('potted-fig-bud-break') };
    const { out } = await answerOf(['plan', 'fig.json', '--json'], { files, plan: madePlan });
    const validate = validatorOf('boughlight-plan-1');
    validate(JSON.parse(out));
    expect(validate.errors).toBeNull();
  });

  it('refuse a cut whose place has no branch, a side of no wind or a field too many', async () => {
    const files = { 'fig.json': exampleText('potted-fig-bud-break') };
    const { out } = await answerOf(['plan', 'fig.json', '--json'], { files, plan: madePlan });
    const validate = validatorOf('boughlight-plan-1');
    for (const change of [{ branch: undefined }, { branchSide: 'left' }, { row: 3 }]) {
      const plan = JSON.parse(out) as { cuts: { place: object }[] };
      Object.assign(plan.cuts[0]?.place ?? {}, change);
      expect(validate(JSON.parse(JSON.stringify(plan)))).toBe(false);
    }
  });

  it('refuse an answer with a field too many, a field too few or a number that is none', () => {
    const validate = validatorOf('boughlight-light-1');
    const good = {
      format: 'boughlight-light',
      version: 1,
      period: { from: '2027-05-03', to: '2027-10-19' },
      weather: 'normal',
      sky: 'uniform',
      openSkyParMolM2Day: 31.7,
      seed: 1,
      rays: 977,
      shoots: [],
    };
    expect(validate(good)).toBe(true);
    expect(validate({ ...good, colour: 'green' })).toBe(false);
    expect(validate({ ...good, seed: undefined })).toBe(false);
    expect(validate({ ...good, openSkyParMolM2Day: null })).toBe(false);
  });
});
