/** The published sample trees, as text. */
import { readFileSync } from 'node:fs';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';

export const sampleIds = [
  'potted-fig-bud-break',
  'potted-fig-in-leaf',
  'old-fig-in-ground',
  'young-whip',
] as const;
export type SampleId = (typeof sampleIds)[number];

export const sampleText = (id: SampleId): string =>
  readFileSync(new URL(`../../public/examples/${id}.json`, import.meta.url), 'utf8');

export function sampleFile(id: SampleId): TreeFile {
  const read = parseTreeFile(sampleText(id));
  if (!read.ok) throw new Error(`sampleFile: ${id} was refused, got ${read.where}: ${read.reason}`);
  return read.file;
}

/** `ext` may be anything; its type has no end. */
export type LooseFile = Omit<TreeFile, 'ext'> & { ext?: unknown };

/** The text of a sample after something was done to it. */
export function changedSample(id: SampleId, change: (file: LooseFile) => void): string {
  const file = JSON.parse(sampleText(id)) as LooseFile;
  change(file);
  return JSON.stringify(file);
}
