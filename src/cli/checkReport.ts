/** What a tree file holds, once it was taken. */
import type { TreeFile } from '../document/treeFile.ts';
import { aroundText } from './aroundText.ts';

export interface CheckReport {
  readonly format: 'boughlight-check';
  readonly version: 1;
  readonly name: string;
  readonly species: string;
  readonly counts: {
    readonly axes: number;
    readonly buds: number;
    readonly shootsInLeaf: number;
    readonly leaves: number;
  };
  /** What stands around the tree and what it does to the light, a sentence each. */
  readonly around: readonly string[];
  /** What was put right or looks odd, a sentence each. */
  readonly notes: readonly string[];
}

export function checkReport(file: TreeFile, notes: readonly string[]): CheckReport {
  const { axes } = file;
  return {
    format: 'boughlight-check',
    version: 1,
    name: file.name,
    species: file.species,
    counts: {
      axes: axes.length,
      buds: axes.reduce((sum, { buds }) => sum + buds.length, 0),
      shootsInLeaf: axes.filter(({ foliage }) => foliage !== null && foliage.count > 0).length,
      leaves: axes.reduce((sum, { foliage }) => sum + (foliage?.count ?? 0), 0),
    },
    around: aroundText(file),
    notes,
  };
}
