/** Visible text of the Work sheet; that of a cut is in `cutWords.ts`, of marks in `pinWords.ts`. */
import { formatDecimal } from '../../../geometry/measure.ts';
import type { Boldness } from '../../../plan/choice.ts';
import type { CautionKey } from '../../../plan/cut.ts';
import { type FigsLost, whyFewer } from '../../../plan/fewerFigs.ts';
import type { Confidence, Range } from '../../../plan/worlds/standsIn.ts';

const figs = (count: number): string => {
  const text = formatDecimal(count, 0);
  return `${text} ${text === '1' ? 'fig' : 'figs'}`;
};

const between = ({ low, high }: Range): string => `${formatDecimal(low, 0)} to ${formatDecimal(high, 0)}`;

const theCuts = (n: number): string => (n === 1 ? '1 cut ticked' : `${n} cuts ticked`);

const cautionNames: Readonly<Record<CautionKey, string>> = {
  sap: 'sap',
  tools: 'tools',
  ladder: 'a ladder',
  saw: 'a saw',
  'power lines': 'power lines',
  'large limb': 'a large limb',
  fork: 'a weak fork',
  'local rules': 'local rules',
  estimate: 'an estimate',
};

export const workWords = {
  headline: (ticked: number, ripe: number, doNothing: number) =>
    ticked === 0
      ? `Do nothing: ${figs(doNothing)} ripen`
      : `${figs(ripe)} ripen instead of ${formatDecimal(doNothing, 0)}`,
  headlineBy: (ticked: number, more: number, lost: readonly FigsLost[]) =>
    ticked === 0
      ? 'Normal year, no cut made.'
      : `Normal year, ${theCuts(ticked)}.${
          more < -0.5 ? ` Fewer than doing nothing. ${whyFewer(lost)}` : ''
        }`,
  /** How far the figs lie apart over plausible trees and years; of the list as it is advised. */
  range: ({ worlds, figs: over }: Confidence): string | null =>
    over === null
      ? null
      : `In ${worlds} plausible trees and years ${between(over.plan)} against ${between(over.doNothing)}; no fewer in ${over.betterIn}.`,
  headlineNone: 'Nothing needs doing on this day.',
  planning: 'Working out what to do.',
  notPlanned: 'There is no list for this tree and day yet.',
  stale: 'The tree or what was asked has changed. This list is the old one; a new one is on its way.',
  staleStopped: 'The tree or what was asked has changed. This list is the old one.',
  approximate: 'A first answer, from the list before: the tree is grown and tried anew for this one.',
  first:
    'How sure each cut is: still being tried in plausible trees and years. Cuts that turn out to be your call move to the end of the list.',
  firstStopped: 'How sure each cut is has not been tried.',
  calls: (n: number) =>
    n === 1 ? '1 cut is your call, at the end.' : `${n} cuts are your call, at the end.`,
  cancelled: 'Stopped.',
  failed: (message: string) => `The list could not be worked out. ${message}`,
  again: 'Plan again',
  scoring: 'Growing the tree for these cuts',
  settings: (day: string, boldness: Boldness) => `${day}, ${boldness}`,
  date: 'Day of the work',
  remarks: (n: number) => (n === 1 ? '1 note' : `${n} notes`),
  before: 'Before you cut',
  cautionsInShort:
    'Fig sap burns skin in the sun: gloves, sleeves. Clean, sharp tools. An estimate: look first.',
  cautionsOfSome: (keys: readonly CautionKey[]) =>
    `Some cuts: mind ${keys.map((key) => cautionNames[key]).join(', ')}.`,
  inFull: 'In full',
  list: 'Cut list',
  cuts: (n: number) => (n === 1 ? 'The cut' : `The ${n} cuts, in order of work`),
  tickAll: 'Tick all',
  untickAll: 'Untick all',
  afterStep: (ripe: string, light: string) =>
    `After this step: ${ripe} ripe figs, mean light ${light} of open sky.`,
  yourCall: 'Your call',
  withYourCall: (ripe: number) => `With all of it done, too: ${formatDecimal(ripe, 1)} ripe figs.`,
  score: 'What it does',
  scoreTitle: 'Doing nothing and the cuts, in figures',
  columns: { what: 'This season', nothing: 'Do nothing', ticked: 'Ticked cuts', all: 'All cuts' },
  rows: {
    ripe: 'Ripe figs',
    first: 'First crop',
    wood: 'Fruiting wood',
    dark: 'In deep shade',
    shoots: 'Shoots',
    light: 'Mean light',
  },
  meaning: 'What these numbers mean, and what they cannot tell',
  meanings: [
    'Ripe figs: of the main crop, ripe before the nights grow too cold. First crop: figs on last year’s wood. Fruiting wood: length of shoot that gets fruiting light. Mean light: mean over the shoots, as share of open sky.',
    'Compare the columns; do not count on a total. The step from light to figs is not measured on fig trees, and how many a pot can feed is growers’ word: 20 to 100 where we take 50.',
    'Pests, water, feed, the pot and the wounds of pruning are not in it, nor is the weather of this year. The list is a good one, not a proven best.',
    'After each step: with all shoots as strong as the whole list makes them, so that only the light changes.',
  ],
  print: 'Print the list',
  csv: 'Save as a table (CSV)',
  calendar: 'Save the days (calendar)',
  outputs: 'Take it along',
  saved: (name: string) => `Saved ${name}`,
  treeShown: 'Tree on the stage',
  treeNow: 'Now',
  treeInSummer: 'Summer',
} as const;
