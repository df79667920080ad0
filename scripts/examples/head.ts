/** What every sample tree begins with. */
import { currentVersion, formatName } from '../../src/document/treeFile.ts';

export const head = (id: string, name: string, note: string) => ({
  $schema: '../schema/boughlight-tree-1.schema.json',
  format: formatName as typeof formatName,
  version: currentVersion as typeof currentVersion,
  id,
  name,
  note,
});
