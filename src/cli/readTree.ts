/** From a path to a tree, or to words for why not. */
import { parseTreeFile } from '../document/parseTreeFile.ts';
import { sizeLimitBytes } from '../document/readText.ts';
import type { TreeFile } from '../document/treeFile.ts';
import { misuse, type Read } from './read.ts';
import type { Terminal } from './terminal.ts';

export interface ReadTree {
  readonly file: TreeFile;
  readonly notes: readonly string[];
}

const troubles: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file. Check the path',
  ENOTDIR: 'there is no such file: a part of the path is no folder. Check the path',
  EISDIR: 'this is a folder. Give the path of a tree file in it',
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

export async function readTree(path: string, terminal: Terminal): Promise<Read<ReadTree>> {
  const place = path === '-' ? 'standard input' : path;
  let bytes: Uint8Array;
  try {
    const most = sizeLimitBytes + 1;
    bytes = path === '-' ? await terminal.readInput(most) : await terminal.readFile(path, most);
  } catch (error) {
    return misuse(`${place}: ${troubleOf(error)}.`);
  }
  const parsed = parseTreeFile(bytes);
  if (!parsed.ok) return misuse(`${place}: ${parsed.where}: ${parsed.reason}`);
  return { ok: true, value: { file: parsed.file, notes: parsed.notes } };
}
