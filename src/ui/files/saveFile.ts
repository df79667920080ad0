/** Saving the open tree, or what was made of it, as a file on the device. */
import type { TreeFile } from '../../document/treeFile.ts';
import { writeTreeFile } from '../../document/writeTreeFile.ts';

export const saveFile = (file: TreeFile): string =>
  saveText(writeTreeFile(file), `${file.id}.json`, 'application/json');

/** Hands a text over as a file of that name, which is returned. */
export function saveText(text: string, name: string, type: string): string {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
  return link.download;
}
