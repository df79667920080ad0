/** An edit takes a tree file and gives the next one; the file it was given is never changed. */
import type { TreeFile } from '../document/treeFile.ts';

export type TreeAxis = TreeFile['axes'][number];

export type Edited =
  | {
      readonly ok: true;
      readonly file: TreeFile;
      /** What was done, as shown beside undo: "Moved East limb". */
      readonly said: string;
      /** What to select afterwards, when it is not what was selected before. */
      readonly select?: string | null;
    }
  | {
      readonly ok: false;
      /** Why not, and what to do, in plain words. */
      readonly reason: string;
    };

export type Edit = (file: TreeFile) => Edited;

export const refuse = (reason: string): Edited => ({ ok: false, reason });

/** The axis of that id. Throws when there is none: a stale id is a mistake of the caller. */
export function axisOf(file: TreeFile, id: string): TreeAxis {
  const axis = file.axes.find((a) => a.id === id);
  if (axis === undefined) throw new Error(`axisOf: no branch with id ${id}`);
  return axis;
}

/** The file with some axes replaced by those of the same id. */
export function withAxes(file: TreeFile, changed: readonly TreeAxis[]): TreeFile {
  const byId = new Map(changed.map((axis) => [axis.id, axis]));
  return { ...file, axes: file.axes.map((axis) => byId.get(axis.id) ?? axis) };
}
