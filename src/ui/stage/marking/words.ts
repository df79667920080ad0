/** Words of marking by strokes on the stage. */
import type { BrushMark } from '../../../editor/edits/brush.ts';
import { treeWords } from '../../sheets/tree/words.ts';

const { conditions, figs, pins } = treeWords;

export const markingWords = {
  mark: 'Mark',
  markHelp: 'Strokes over branches mark them instead of drawing',
  as: 'Mark as',
  marks: {
    live: conditions.live,
    dead: conditions.dead,
    diseased: conditions.diseased,
    damaged: conditions.damaged,
    figs: figs.yes,
    noFigs: figs.no,
    keep: pins.keep,
    remove: pins.remove,
    free: pins.free,
  } satisfies Readonly<Record<BrushMark, string>>,
  under: (n: number, mark: string): string => `${n === 1 ? '1 branch' : `${n} branches`}: ${mark}`,
} as const;
