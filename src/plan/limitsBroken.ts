/** Which limits the kept shoots break, in plain words. */
import type { Breaches } from './limits.ts';

export type LimitsBroken = Pick<
  Breaches,
  'bareBranches' | 'bareBases' | 'overFull' | 'leadingBudsGone' | 'tooClosePairs'
>;

const counted = (n: number, one: string, many: string): string => (n === 1 ? `1 ${one}` : `${n} ${many}`);

/** Null where all are held; what a year may take of the leaves, and shoots in leaf that lead, are told elsewhere. */
export function brokenText(broken: LimitsBroken): string | null {
  const { bareBranches, bareBases, overFull, leadingBudsGone, tooClosePairs } = broken;
  const parts = [
    ...(bareBranches === 0 ? [] : [`${counted(bareBranches, 'branch keeps', 'branches keep')} no shoot`]),
    ...(bareBases === 0 ? [] : [`${counted(bareBases, 'limb keeps', 'limbs keep')} none near the base`]),
    ...(overFull === 0
      ? []
      : [`${counted(overFull, 'shoot stays', 'shoots stay')} beyond what the limbs carry well`]),
    ...(leadingBudsGone === 0
      ? []
      : [`${counted(leadingBudsGone, 'branch loses', 'branches lose')} the end bud`]),
    ...(tooClosePairs === 0
      ? []
      : [`${counted(tooClosePairs, 'pair stands', 'pairs stand')} too close on one side`]),
  ];
  if (parts.length === 0) return null;
  return `Not every limit could be held, with what grows there and what you marked: ${parts.join('; ')}.`;
}
