/** The published JSON Schema (2020-12) of the tree file, made from the one source of truth. */
import * as z from 'zod';
import { currentVersion, formatName, treeFileSchema } from './treeFile.ts';

/** A version's schema is never changed once released; a new version gets a new one. */
export const schemaId = `urn:boughlight:schema:${formatName}:${currentVersion}`;

/** Where it is published, below the site's root. */
export const schemaFile = `schema/${formatName}-${currentVersion}.schema.json`;

/** Text of the schema, as published. It describes what may be read: entries with a default may be left out. */
export function jsonSchemaText(): string {
  const { $schema, ...made } = z.toJSONSchema(treeFileSchema, {
    target: 'draft-2020-12',
    io: 'input',
    override: ({ jsonSchema }) => {
      // A list of fixed length is exactly that long; the generator leaves this out.
      if (!jsonSchema.prefixItems) return;
      jsonSchema.minItems = jsonSchema.prefixItems.length;
      jsonSchema.items = false;
    },
  });
  const schema = {
    $schema,
    $id: schemaId,
    title: 'Boughlight tree file',
    description:
      'Metres, degrees, shares from 0 to 1. World axes: x east, y up, z south. Whether a file means a tree (one trunk, no circle, buds within their branch) is checked on reading, beyond this schema.',
    ...made,
  };
  return `${JSON.stringify(schema, null, 2)}\n`;
}
