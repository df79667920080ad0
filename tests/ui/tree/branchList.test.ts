import { describe, expect, it } from 'vitest';
import { listBranches } from '../../../src/ui/sheets/tree/branchList.ts';
import { smallTree } from '../../editor/smallTree.ts';

describe('the list of branches', () => {
  it('walks up the tree, each branch followed by what grows on it', () => {
    const listed = listBranches(smallTree).map(({ axis, depth }) => `${depth} ${axis.id}`);
    expect(listed).toEqual(['0 trunk', '1 east', '2 lateral', '3 shoot-1', '3 shoot-2', '1 west']);
  });
});
