import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { jsonSchemaText, schemaFile, schemaId } from '../../src/document/jsonSchema.ts';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { badShapes } from '../bad-input/badTrees.ts';
import { sampleIds, sampleText } from './sampleFiles.ts';

const published = readFileSync(new URL(`../../public/${schemaFile}`, import.meta.url), 'utf8');
// Formats are checked by the patterns beside them.
const validate = new Ajv2020({ strict: true, strictTypes: false, formats: { date: true } }).compile(
  JSON.parse(published),
);

describe('the published schema', () => {
  it('is what the schema in the source gives; `node scripts/makeSchema.mjs` writes it', () => {
    expect(published).toBe(jsonSchemaText());
    expect(JSON.parse(published)).toMatchObject({ $id: schemaId, additionalProperties: false });
  });

  it.each(sampleIds)('validates %s', (id) => {
    expect(validate(JSON.parse(sampleText(id))), JSON.stringify(validate.errors)).toBe(true);
  });

  it.each(badShapes)('refuses, as reading does: $name', ({ text }) => {
    expect(validate(JSON.parse(text))).toBe(false);
    expect(parseTreeFile(text).ok).toBe(false);
  });
});
