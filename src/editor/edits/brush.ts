/** Marks that are put on branches by a stroke over them. */
import type { TreeFile } from '../../document/treeFile.ts';
import { axisOf, type Edited, refuse } from '../edit.ts';
import { type Mark, markMany } from './many.ts';

export const brushMarks = {
  live: { condition: 'live' },
  dead: { condition: 'dead' },
  diseased: { condition: 'diseased' },
  damaged: { condition: 'damaged' },
  figs: { bearsFigs: true },
  noFigs: { bearsFigs: false },
  keep: { pin: 'keep' },
  remove: { pin: 'remove' },
  free: { pin: null },
} as const satisfies Readonly<Record<string, Mark>>;

export type BrushMark = keyof typeof brushMarks;

/** Marks what a stroke went over, each branch alone. The trunk cannot go: a stroke that began on it marks the others all the same. */
export function brushOver(file: TreeFile, ids: Iterable<string>, as: BrushMark): Edited {
  const mark: Mark = brushMarks[as];
  const isNew = (id: string): boolean => {
    const axis = axisOf(file, id);
    if (mark.pin === 'remove' && axis.parentId === null) return false;
    return Object.entries(mark).some(([name, value]) => axis[name as keyof Mark] !== value);
  };
  const changed = [...ids].filter(isNew);
  return changed.length === 0
    ? refuse('Nothing is changed: what the stroke went over is marked so, or cannot be.')
    : markMany(file, changed, mark);
}
