/** What the checks of meaning say to each other. */

import type { Place } from '../shape.ts';
import type { TreeFile } from '../treeFile.ts';

export type FileAxis = TreeFile['axes'][number];

/** Something that cannot be: where, and a sentence that says what, why and what to do. */
export interface Finding {
  readonly place: Place;
  readonly reason: string;
}

/** Metres as the grower reads them in a refusal. */
export const inM = (m: number): string => `${Math.round(m * 1000) / 1000} m`;
export const inMm = (m: number): string => `${Math.round(m * 1e4) / 10} mm`;
