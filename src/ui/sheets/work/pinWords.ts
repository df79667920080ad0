/** Visible text about what the grower marked to stay or to go. */
export const pinWords = {
  mark: (pin: 'keep' | 'remove', isBud: boolean): string =>
    pin === 'keep' ? 'Keep it' : isBud ? 'Rub it off' : 'Take it off',
  /** A bud by its branch, with the tape at the fork. */
  bud: (branch: string, along: string) => `Bud ${along} out on ${branch}`,
  picked: (name: string) => `Picked: ${name}`,
  help: {
    keep: 'It stays, whatever the plan finds; press again to leave it to the plan',
    remove: 'It goes, whatever the plan finds; press again to leave it to the plan',
  },
} as const;
