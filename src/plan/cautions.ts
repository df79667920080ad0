/** The cautions, word for word, and which of them a cut calls for. */
import type { FigValues } from '../species/fig.ts';
import type { CautionKey, CutKind } from './cut.ts';

export const cautionText: Readonly<Record<CautionKey, string>> = {
  sap: 'Fig sap irritates and, with sunlight, burns skin: wear gloves and long sleeves, wash it off at once, keep it off your eyes, and keep skin out of the sun for two days.',
  tools:
    'Use sharp, clean tools and protect your eyes. Disinfect the blades between trees, and between cuts in sick wood.',
  ladder:
    'Keep your feet on the ground where you can. Stand a ladder on firm, level ground, by its maker’s instructions, and never on its top steps.',
  saw: 'Never work alone with a saw above shoulder height. Take thick wood off in three cuts so that the bark does not tear.',
  'power lines':
    'If a branch is near a power line, stop and call the utility or a licensed arborist. Stay 3 m (10 ft) away, tools included.',
  'large limb': 'This is a large limb. Stop: leave it, and any tree that may fall, to a licensed arborist.',
  fork: 'A narrow or split fork may give way without warning. Do not lean on it or stand under it.',
  'local rules':
    'First ask about local rules: protected trees, nesting birds, burning, moving plants, quarantine. For sprays and feeds the label is the law.',
  estimate:
    'The plan is an estimate from a sketch. Look at the tree before each cut; a cut cannot be undone.',
};

/** In the order in which they are printed. */
const order = [
  'estimate',
  'sap',
  'tools',
  'fork',
  'ladder',
  'saw',
  'large limb',
  'power lines',
  'local rules',
] as const;

/** From this height the ground may be shared with overhead lines, metres; our choice: a pruner's reach with a long tool below 4.5 m lines. */
const powerLinesFromM = 2.5;
/** Trees with wood this old may be protected, years; our choice. */
const oldFromYears = 10;

export interface CautionFacts {
  readonly kind: CutKind;
  /** Of the wood cut, metres; 0 for a bud. */
  readonly thicknessM: number;
  /** Of the cut above the ground that people stand on, metres. */
  readonly aboveGroundM: number;
  /** Whether it is a shoot, or a bud that must have grown into one by now: thumbs are not enough. */
  readonly isShoot: boolean;
  readonly atNarrowFork: boolean;
  /** Whether the wood is marked as diseased. */
  readonly isSick: boolean;
  /** Age of the trunk, years. */
  readonly treeAgeYears: number;
}

export function cautionsFor(facts: CautionFacts, values: FigValues): CautionKey[] {
  const wanted = new Set<CautionKey>(['estimate', 'sap']);
  if (facts.kind !== 'rub off bud' || facts.isShoot) wanted.add('tools');
  if (facts.atNarrowFork) wanted.add('fork');
  if (facts.aboveGroundM > values.reachM) wanted.add('ladder');
  if (facts.thicknessM > values.sawFromCm / 100) wanted.add('saw');
  if (facts.thicknessM > values.largeLimbCm / 100) wanted.add('large limb');
  if (facts.aboveGroundM > powerLinesFromM && facts.kind !== 'rub off bud') wanted.add('power lines');
  if (facts.isSick || (facts.treeAgeYears >= oldFromYears && facts.kind === 'remove'))
    wanted.add('local rules');
  return order.filter((key) => wanted.has(key));
}
