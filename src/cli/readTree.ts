/** From a path to a tree, or to words for why not. */
import { parseTreeFile } from '../document/parseTreeFile.ts';
import { sizeLimitBytes } from '../document/readText.ts';
import type { TreeFile } from '../document/treeFile.ts';
import { withEpw } from '../document/withEpw.ts';
import { misuse, type Read } from './read.ts';
import type { WorkRequest } from './request.ts';
import type { Terminal } from './terminal.ts';

export interface ReadTree {
  readonly file: TreeFile;
  readonly notes: readonly string[];
}

const troubles: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file. Check the path',
  ENOTDIR: 'there is no such file: a part of the path is no folder. Check the path',
  EISDIR: 'this is a folder. Give the path of a file in it',
  EACCES: 'the file may not be read by you. Change its permissions, or copy it',
};

function troubleOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return (
    troubles[code] ?? `the file cannot be read (${error instanceof Error ? error.message : String(error)})`
  );
}

/** What was put right or looks odd in a file that is worked on; `check` has it in its answer. */
export function tellNotes(notes: readonly string[], terminal: Terminal): void {
  for (const note of notes) terminal.err(`boughlight: note: ${note}\n`);
}

async function readBytes(path: string, most: number, terminal: Terminal): Promise<Read<Uint8Array>> {
  try {
    const value = path === '-' ? await terminal.readInput(most) : await terminal.readFile(path, most);
    return { ok: true, value };
  } catch (error) {
    return misuse(`${placeOf(path)}: ${troubleOf(error)}.`);
  }
}

const placeOf = (path: string): string => (path === '-' ? 'standard input' : path);

export async function readTree(path: string, terminal: Terminal): Promise<Read<ReadTree>> {
  const bytes = await readBytes(path, sizeLimitBytes + 1, terminal);
  if (!bytes.ok) return bytes;
  const parsed = parseTreeFile(bytes.value);
  if (!parsed.ok) return misuse(`${placeOf(path)}: ${parsed.where}: ${parsed.reason}`);
  return { ok: true, value: { file: parsed.file, notes: parsed.notes } };
}

/** A year of hours takes 2 MB at most. */
const weatherLimitBytes = 16_000_000;

/** The tree, with the weather of a weather file where one is given; what is to be noted of them is told. */
export async function readWork(
  { file: path, weatherFile }: Pick<WorkRequest, 'file' | 'weatherFile'>,
  terminal: Terminal,
): Promise<Read<TreeFile>> {
  const tree = await readTree(path, terminal);
  if (!tree.ok) return tree;
  tellNotes(tree.value.notes, terminal);
  if (weatherFile === undefined) return { ok: true, value: tree.value.file };
  const bytes = await readBytes(weatherFile, weatherLimitBytes + 1, terminal);
  if (!bytes.ok) return bytes;
  if (bytes.value.length > weatherLimitBytes)
    return misuse(`${weatherFile}: the file is larger than a year of hours can be (16 MB).`);
  const given = withEpw(tree.value.file, new TextDecoder().decode(bytes.value));
  if (!given.ok) return misuse(`${weatherFile}: ${given.where}: ${given.reason}`);
  tellNotes(given.notes, terminal);
  return { ok: true, value: given.file };
}
