/** Every sample through the real engine: the answers keep to their published shapes and are the engine's own. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import { projectFolder } from '../house/source.ts';
import { answerOf, exampleText } from './stand.ts';

const validatorOf = (name: string) => {
  const text = readFileSync(join(projectFolder, 'public', 'schema', `${name}.schema.json`), 'utf8');
  return new Ajv2020({ strict: true, validateFormats: false }).compile(JSON.parse(text) as object);
};

const samples = ['old-fig-in-ground', 'potted-fig-bud-break', 'potted-fig-in-leaf', 'young-whip'];

const treeOf = (sample: string) => {
  const parsed = parseTreeFile(exampleText(sample));
  if (!parsed.ok) throw new Error(`samples: ${sample} is refused, got ${parsed.reason}`);
  return parsed.file;
};

describe.each(samples)('the sample %s', { timeout: 120_000 }, (sample) => {
  const told = { files: { 'x.json': exampleText(sample) }, makeEngine: createInPlaceEngine };

  it('gets light in the published shape, the same numbers as from the engine itself', async () => {
    const { out } = await answerOf(['light', 'x.json', '--json', '--waves', '3', '--seed', '11'], told);
    const validate = validatorOf('boughlight-light-1');
    validate(JSON.parse(out));
    expect(validate.errors).toBeNull();
    const { report } = await createInPlaceEngine().light(treeOf(sample), { waves: 3, seed: 11 }).result;
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(report)));
  });

  it('gets the strip of a day and the sky of a node in the published shapes', async () => {
    const { out } = await answerOf(['day', 'x.json', '--date', '2027-07-03', '--json', '--nodes'], told);
    const day = validatorOf('boughlight-day-1');
    day(JSON.parse(out));
    expect(day.errors).toBeNull();
    const { shoots } = JSON.parse(out) as { shoots: { id: string }[] };
    const place = ['--shoot', shoots[0]?.id ?? '', '--node', '1'];
    const sky = validatorOf('boughlight-sky-1');
    sky(JSON.parse((await answerOf(['sky', 'x.json', ...place, '--json'], told)).out));
    expect(sky.errors).toBeNull();
  });

  it('gets a plan in the published shape', async () => {
    const { out } = await answerOf(['plan', 'x.json', '--json', '--waves', '2', '--worlds', '3'], told);
    const validate = validatorOf('boughlight-plan-1');
    validate(JSON.parse(out));
    expect(validate.errors).toBeNull();
  });
});
