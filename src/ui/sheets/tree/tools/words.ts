/** Visible text of what is done with a limb as a whole. */
export const toolWords = {
  more: (name: string) => `More to do with ${name}`,
  along: {
    head: 'Set along it',
    what: 'What',
    whats: { shoots: 'Shoots', buds: 'Buds' },
    count: 'How many',
    first: 'First, from its base',
    spacing: 'From one to the next',
    around: 'First round it',
    turn: 'Turn from one to the next',
    length: 'Length of each',
    leaves: 'Leaves on each',
    act: { shoots: 'Add these shoots', buds: 'Put these buds in place of its own' },
  },
  round: {
    head: 'Copy it round',
    count: 'Limbs in all',
    step: 'Each further along by',
    act: 'Copy it round',
    around: 'Where it sits round its parent',
    mirror: 'Mirror it to the other side',
  },
  split: { head: 'Split it', at: 'From its base', act: 'Split it here' },
  thin: 'Take off every second shoot or bud',
} as const;
