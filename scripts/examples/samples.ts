/** The sample trees, by file name. */
import type { TreeFile } from '../../src/document/treeFile.ts';
import { pottedFigAtBudBreak, pottedFigInLeaf } from './pottedFig.ts';

export const makeSamples: readonly (() => TreeFile)[] = [pottedFigAtBudBreak, pottedFigInLeaf];
