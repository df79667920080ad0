/** The sample trees; each is written under its id. */
import type { TreeFile } from '../../src/document/treeFile.ts';
import { oldFigInGround } from './oldFig.ts';
import { pottedFigAtBudBreak, pottedFigInLeaf } from './pottedFig.ts';
import { youngWhip } from './youngWhip.ts';

export const makeSamples: readonly (() => TreeFile)[] = [
  pottedFigAtBudBreak,
  pottedFigInLeaf,
  oldFigInGround,
  youngWhip,
];
