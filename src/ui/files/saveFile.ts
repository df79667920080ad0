/** Saving the open tree as a file on the device. */
import type { TreeFile } from '../../document/treeFile.ts';
import { writeTreeFile } from '../../document/writeTreeFile.ts';

export function saveFile(file: TreeFile): string {
  const address = URL.createObjectURL(new Blob([writeTreeFile(file)], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = `${file.id}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
  return link.download;
}
