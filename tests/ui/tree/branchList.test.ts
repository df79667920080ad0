import { describe, expect, it } from 'vitest';
import { listBranches } from '../../../src/ui/sheets/tree/branchList.ts';
import { treeWords } from '../../../src/ui/sheets/tree/words.ts';
import { smallTree } from '../../editor/smallTree.ts';

describe('the list of branches', () => {
  it('walks up the tree, each branch followed by what grows on it', () => {
    const listed = listBranches(smallTree).map(({ axis, depth }) => `${depth} ${axis.id}`);
    expect(listed).toEqual(['0 trunk', '1 east', '2 lateral', '3 shoot-1', '3 shoot-2', '1 west']);
  });
});

describe('the headline of the Tree sheet', () => {
  const none = { trunk: 1, scaffold: 0, lateral: 0, shoot: 0, sucker: 0 };

  it('counts no wood that is not there', () => {
    expect(treeWords.headline(none, 0, 21)).toBe('A single stem, 21 buds.');
    expect(treeWords.headline({ ...none, scaffold: 3, shoot: 1, sucker: 2 }, 13, 4)).toBe(
      '3 limbs, 1 shoot, 2 suckers, 13 leaves.',
    );
  });
});
