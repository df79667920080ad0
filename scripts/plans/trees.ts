/** The trees of the table: the samples, and three grown from a form by a seed. */
import { readFileSync } from 'node:fs';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { type FormName, startFigures } from '../../src/editor/forms/formFigures.ts';
import { formTitles, startFromForm } from '../../src/editor/forms/startFromForm.ts';

export interface TableTree {
  readonly name: string;
  readonly file: TreeFile;
}

function sample(id: string): TreeFile {
  const read = parseTreeFile(readFileSync(`public/examples/${id}.json`, 'utf8'));
  if (!read.ok) throw new Error(`sample: ${id} cannot be read, ${read.reason} at ${read.where}`);
  return read.file;
}

/** At bud break, in the place of a sample; a pot, where the sample stands in one, is that of the sample. */
function formed(form: FormName, place: string, seed: number): TableTree {
  const at = sample(place);
  const open: TreeFile = { ...at, season: { ...at.season, sketchedOn: at.season.budBreakOn } };
  const file = startFromForm(open, form, startFigures(form), 'buds', seed);
  return { name: `${formTitles[form]}, seed ${seed}, where the ${at.name.toLowerCase()} stands`, file };
}

export const tableTrees = (): readonly TableTree[] => [
  ...['potted-fig-bud-break', 'potted-fig-in-leaf', 'old-fig-in-ground', 'young-whip'].map((id) => {
    const file = sample(id);
    return { name: file.name, file };
  }),
  formed('open-vase', 'potted-fig-bud-break', 7),
  formed('fan', 'old-fig-in-ground', 8),
  formed('bush', 'old-fig-in-ground', 9),
];
