/** Visible text of the handles and of the figures beside a branch. */
import type { HeldName } from '../../../editor/pull/held.ts';
import type { HandleKind } from './handleLayout.ts';

export const handleWords = {
  handles: (branch: string) => `Handles of ${branch}`,
  handle: (kind: HandleKind, nth: number, branch: string): string =>
    ({
      tip: `Tip of ${branch}`,
      base: `Where ${branch} leaves its parent`,
      bend: `Bend ${nth + 1} of ${branch}`,
      round: `Turn ${branch} round its parent`,
      thickness: `Thickness of ${branch}`,
    })[kind],
  keys: 'Arrow keys move it, with Shift in small steps. Enter keeps the change, Escape leaves no trace.',
  figures: (branch: string) => `Figures of ${branch}`,
  open: (branch: string, figures: string) => `${figures}. Type in the figures of ${branch}`,
  close: 'Close',
  fields: { side: 'Side', upright: 'From upright', length: 'Length', thickness: 'Thick at base' } as const,
  lock: {
    side: 'Lock the side',
    upright: 'Lock the angle',
    length: 'Lock the length',
    thickness: 'Lock the thickness',
  } as const satisfies Record<HeldName, string>,
  lockTitle: (isHeld: boolean) =>
    isHeld ? 'Locked: a pull leaves it as it is' : 'Lock it: a pull will leave it as it is',
  byRule: 'Thick by rule',
  byRuleTitle: 'As thick as its tip and what it carries together, by the rule of branch areas',
} as const;
