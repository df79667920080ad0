/** What every part of the picture from above is told. */
import type { TreeFile } from '../../../../document/treeFile.ts';
import { metresPer, type Units } from '../../../../geometry/measure.ts';
import type { Draft } from './draft.ts';

/** The tree, or the place of a thing in the list. */
export type Picked = 'tree' | number | null;

export interface PlanFrame {
  /** The place as it is; the draft holds it as it is drawn. */
  readonly file: TreeFile;
  readonly draft: Draft;
  /** Radius of the ring of the winds, metres. */
  readonly ringM: number;
  readonly units: Units;
  readonly picked: Picked;
  readonly onPick: (picked: Picked) => void;
}

/** How far one step of an arrow key or of a dragging hand goes, metres. */
export const stepM = (units: Units): number => (units === 'us' ? metresPer.ft / 4 : 0.05);

/** A grip for turning lies so far off, as a share of the ring. */
export const turnRoom = 0.16;
