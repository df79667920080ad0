/** Visible text about what the grower marked to stay or to go. */
import type { Part } from '../../../editor/edits/pin.ts';
import { formatLength, type Units } from '../../../geometry/measure.ts';

export const pinWords = {
  mark: (pin: 'keep' | 'remove', isBud: boolean): string =>
    pin === 'keep' ? 'Keep it' : isBud ? 'Rub it off' : 'Take it off',
  help: {
    keep: 'It stays, whatever the plan finds; press again to leave it to the plan',
    remove: 'It goes, whatever the plan finds; press again to leave it to the plan',
  },
  /** A bud by its branch, with the tape at the fork; a branch by its name. */
  name: ({ isBud, branch, atM }: Part, units: Units): string =>
    isBud ? `Bud ${formatLength(atM, units)} out on ${branch}` : branch,
  picked: (name: string) => `Picked: ${name}`,
  onStage: 'keep',
  count: (n: number) => (n === 1 ? '1 mark' : `${n} marks`),
  said: ({ pin, isBud }: Part): string => (pin === 'keep' ? 'Keep:' : isBud ? 'Rub off:' : 'Take off:'),
  meaning: 'Yours, not the plan’s: they are kept in the tree’s file, and every list obeys them.',
  show: 'Show',
  free: 'Leave it to the plan',
  freeAll: 'Leave all to the plan',
} as const;
