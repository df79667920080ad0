/** Visible text of the Work sheet; the words of the cuts themselves are made by the plan. */
import { formatDecimal } from '../../../geometry/measure.ts';

const figs = (count: number): string => {
  const text = formatDecimal(count, 0);
  return `${text} ${text === '1' ? 'fig' : 'figs'}`;
};

const signed = (value: number, text: (size: number) => string): string =>
  value < 0 ? `−${text(-value)}` : `+${text(value)}`;

const cuts = (n: number): string => (n === 1 ? 'the one cut' : `the ${n} cuts`);

export const workWords = {
  headline: (ticked: number, ripe: number, doNothing: number) =>
    ticked === 0
      ? `Do nothing, and about ${figs(doNothing)} ripen this season.`
      : `Make ${cuts(ticked)} ticked, and about ${figs(ripe)} ripen instead of ${formatDecimal(doNothing, 0)}.`,
  headlineNone: 'Nothing needs doing on this day.',
  planning: 'Working out what to do.',
  notPlanned: 'There is no list for this tree and day yet.',
  stale: 'The tree or the day has changed. This list is the old one; a new one is on its way.',
  staleStopped: 'The tree or the day has changed. This list is the old one.',
  cancelled: 'Stopped.',
  failed: (message: string) => `The list could not be worked out. ${message}`,
  again: 'Plan again',
  scoring: 'Growing the tree for these cuts',
  date: 'Day of the work',
  before: 'Before you cut',
  more: 'For some of these cuts',
  score: 'What it does',
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
  ],
  cuts: (n: number) => (n === 1 ? 'The cut' : `The ${n} cuts, in order of work`),
  tickAll: 'Tick all',
  untickAll: 'Untick all',
  treeShown: 'Tree on the stage',
  treeNow: 'Tree as sketched',
  treeInSummer: 'Tree in summer',
  why: 'Why',
  when: (from: string, to: string) => (from === to ? `On ${from}` : `${from} to ${to}`),
  gain: (count: number) =>
    Math.abs(count) < 0.05 ? 'no change in figs' : `${signed(count, (n) => formatDecimal(n, 1))} figs`,
  wood: (lengthM: number, length: (m: number) => string) =>
    Math.abs(lengthM) < 0.005 ? null : `${signed(lengthM, length)} in fruiting light`,
  /** Gains that round to nothing are left out. */
  lights(lights: readonly { name: string; shareGain: number }[]): string | null {
    const gains = lights.filter((light) => light.shareGain >= 0.005);
    if (gains.length === 0) return null;
    return `More light for ${gains.map((l) => `${l.name} (+${formatDecimal(l.shareGain * 100, 0)} %)`).join('; ')}.`;
  },
  showMe: 'Show me',
  alsoMind: 'Mind',
  cautionNames: {
    sap: 'sap',
    tools: 'tools',
    ladder: 'ladder',
    saw: 'saw',
    'power lines': 'power lines',
    'large limb': 'large limb',
    fork: 'weak fork',
    'local rules': 'local rules',
    estimate: 'estimate',
  },
  remarks: 'Also worth knowing',
} as const;
