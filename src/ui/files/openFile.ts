/** Opening a tree file: from the device, dropped on the page, or one of the samples. */
import { parseTreeFile } from '../../document/parseTreeFile.ts';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Editor } from '../../editor/editor.ts';

/** The refusal in words: what is wrong, where, and that nothing was lost. */
export function refusalText(name: string, reason: string, where: string): string {
  return `${name} was not opened. ${reason} Place in the file: ${where}. Your open tree is untouched.`;
}

/** Opens a file's text or bytes in the editor, or says why not. */
export function openInto(editor: Editor, name: string, content: string | Uint8Array): boolean {
  const parsed = parseTreeFile(content);
  if (!parsed.ok) {
    editor.say({ kind: 'refused', text: refusalText(name, parsed.reason, parsed.where) });
    return false;
  }
  editor.open(parsed.file);
  const said = [`Opened ${parsed.file.name}.`, ...parsed.notes].join(' ');
  editor.say({ kind: 'done', text: said });
  return true;
}

/** Larger files are turned away before they are read. */
const largestBytes = 5 * 1024 * 1024;

export async function openFromDevice(editor: Editor, file: File): Promise<void> {
  if (file.size > largestBytes) {
    editor.say({
      kind: 'refused',
      text: `${file.name} was not opened: it is larger than 5 MB, and a tree file is far smaller. Your open tree is untouched.`,
    });
    return;
  }
  openInto(editor, file.name, new Uint8Array(await file.arrayBuffer()));
}

export interface Sample {
  /** Name of its file, without the ending. */
  readonly id: string;
  readonly title: string;
  readonly about: string;
}

export const samples: readonly Sample[] = [
  { id: 'potted-fig-in-leaf', title: 'Potted fig in leaf', about: 'July, every bud was left to grow' },
  { id: 'potted-fig-bud-break', title: 'Potted fig at bud break', about: 'April, the same tree, bare' },
  { id: 'old-fig-in-ground', title: 'Old fig in the ground', about: 'Crossing limbs, dead wood, suckers' },
  { id: 'young-whip', title: 'Young whip', about: 'Its form still to be made; southern hemisphere' },
];

async function sampleText(id: string): Promise<string> {
  const response = await fetch(`./examples/${id}.json`);
  if (!response.ok)
    throw new Error(`sampleText: the sample ${id} could not be read, got status ${response.status}`);
  return response.text();
}

/** Throws when the page's own sample cannot be read. */
export async function readSample(id: string): Promise<TreeFile> {
  const parsed = parseTreeFile(await sampleText(id));
  if (!parsed.ok) throw new Error(`readSample: ${refusalText(id, parsed.reason, parsed.where)}`);
  return parsed.file;
}

export async function openSample(editor: Editor, id: string): Promise<void> {
  try {
    editor.open(await readSample(id));
  } catch {
    editor.say({
      kind: 'refused',
      text: 'That sample could not be read. Go online once, or open a file of your own.',
    });
  }
}
