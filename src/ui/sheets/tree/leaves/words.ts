/** Visible text of how many leaves there are, and how large. */
const shoots = (n: number): string => (n === 1 ? '1 shoot' : `${n} shoots`);

export const leafWords = {
  head: 'Leaves: counted or estimated, and their size',
  size: 'Leaf size on this tree: midrib of a full-grown leaf, mid-shoot',
  sizeIs: {
    measured: 'Measured on this tree. Shoots on which a leaf was measured keep their own.',
    usual: 'The usual fig. Measure a leaf without its stalk and put it in.',
  },
  forget: 'Back to the usual fig',
  counts(counted: number, estimated: number): string {
    if (counted + estimated === 0) return 'No shoot is in leaf.';
    return `Leaves were counted on ${shoots(counted)}, estimated on ${estimated}.`;
  },
  how: 'Estimate them from the length of each shoot',
  hows: { grown: 'Full-grown', day: 'On a day' },
  day: 'The shoots have this length on',
  estimate: (n: number) => `Estimate the leaves of ${shoots(n)}`,
  kept: 'What was counted or measured stays as it is. To count a shoot, type its leaves; to let it be estimated, say so beside them.',
} as const;
