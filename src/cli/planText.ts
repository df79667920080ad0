/** A plan as text: the answer first, the score beside doing nothing, then the cuts in the order of work. */
import type { TreeFile } from '../document/treeFile.ts';
import type { EnergyBasis } from '../engine/energyBasis.ts';
import { formatArea, formatDecimal, formatLength, type Units } from '../geometry/measure.ts';
import { cautionText } from '../plan/cautions.ts';
import type { CautionKey, Cut, Gain } from '../plan/cut.ts';
import { pinchText } from '../plan/pinchWords.ts';
import type { Plan } from '../plan/plan.ts';
import type { Score } from '../plan/score.ts';
import { ifKeptText, passText, placeText, reasonText, type Viewpoint, whatText } from '../plan/words.ts';
import type { Confidence } from '../plan/worlds/standsIn.ts';
import { rangeText, standsText, yourCallText } from '../plan/worlds/standsWords.ts';
import { energyWords } from './energyWords.ts';
import { renewalLines } from './renewalText.ts';
import { table, wrapped } from './table.ts';

const lineWidth = 100;

const signed = (text: string): string => (text.startsWith('-') ? text.replace('-', '−') : `+${text}`);

function scoreLines({ doNothing, plan }: Plan['score'], units: Units): string[] {
  const row = (title: string, cell: (score: Score) => string): string[] => [
    title,
    cell(doNothing),
    cell(plan),
  ];
  return table(
    [
      { title: '', align: 'left' },
      { title: 'Nothing done', align: 'right' },
      { title: 'With the plan', align: 'right' },
    ],
    [
      row('Ripe figs, main crop', ({ ripeFigs }) => formatDecimal(ripeFigs, 1)),
      row('Figs set', ({ figsSet }) => formatDecimal(figsSet, 1)),
      row('Figs on last year’s wood', ({ firstCropFigs }) => formatDecimal(firstCropFigs, 1)),
      row('Wood in fruiting light', ({ fruitingWoodM }) => formatLength(fruitingWoodM, units)),
      row('Shoots', ({ shootCount }) => `${shootCount}`),
      row('Shoots in deep shade', ({ deepShadeCount }) => `${deepShadeCount}`),
      row('Leaf area', ({ leafAreaM2 }) => formatArea(leafAreaM2, units)),
      row('Mean light, of open sky', ({ meanLight }) => `${formatDecimal(100 * meanLight, 0)} %`),
    ],
  );
}

/** The pinch of early summer with its harvest, week by week. */
function pinchLines(pinch: Plan['pinch']): string[] {
  if (pinch === null) return [];
  const rows = pinch.weeks.map((week) => [
    week.from,
    formatDecimal(week.without, 1),
    formatDecimal(week.with, 1),
    week.isGood ? 'yes' : 'no',
  ]);
  return [
    '',
    ...wrapped(`Early summer: ${pinchText(pinch)}`, lineWidth, '', '  '),
    ...wrapped(`Caution: ${cautionText.sap}`, lineWidth, '  ', '    '),
    ...table(
      [
        { title: 'Ripe figs in the week from', align: 'left' },
        { title: 'Not pinched', align: 'right' },
        { title: 'Pinched', align: 'right' },
        { title: 'Warm and dry', align: 'right' },
      ],
      rows,
    ),
  ];
}

/** The steps, when there are two or more. */
function stepLines(steps: Plan['steps']): string[] {
  if (steps.length < 3) return [];
  const rows = steps.map(({ step, cuts, ripeFigs, meanLight }) => [
    step,
    `${cuts}`,
    formatDecimal(ripeFigs, 1),
    `${formatDecimal(100 * meanLight, 0)} %`,
  ]);
  return [
    '',
    ...table(
      [
        { title: 'After each step', align: 'left' },
        { title: 'Cuts', align: 'right' },
        { title: 'Ripe figs', align: 'right' },
        { title: 'Mean light', align: 'right' },
      ],
      rows,
    ),
    'Each row has the shoots as strong as the whole plan makes them.',
  ];
}

/** The plans to choose from, where they differ. */
function choiceLines(choice: Plan['choice']): string[] {
  const rows = choice
    .filter(({ reads }) => reads.length > 0)
    .map(({ shoots, ripeFigs, meanLight, deepShade, reads }) => [
      [...reads].reverse().join(', '),
      `${shoots}`,
      formatDecimal(ripeFigs, 1),
      `${formatDecimal(100 * meanLight, 0)} %`,
      `${deepShade}`,
    ]);
  if (rows.length < 2) return [];
  return [
    '',
    ...table(
      [
        { title: 'To choose from', align: 'left' },
        { title: 'Shoots', align: 'right' },
        { title: 'Ripe figs', align: 'right' },
        { title: 'Mean light', align: 'right' },
        { title: 'In deep shade', align: 'right' },
      ],
      rows,
    ),
    'From a quick look, with the shoots as strong as the balanced plan makes them.',
  ];
}

/** What the cut alone brings, without what would be shown as nought. */
function gainWords({ figs, fruitingWoodM, lights }: Gain, units: Units): string {
  const shoots = lights
    .map(({ name, shareGain }) => ({ name, percent: formatDecimal(100 * shareGain, 0) }))
    .filter(({ percent }) => percent !== '0')
    .map(({ name, percent }) => `${name} ${signed(percent)} %`);
  const parts = [
    ...(Math.abs(figs) < 0.05 ? [] : [`${signed(formatDecimal(figs, 1))} ripe figs`]),
    ...(Math.abs(fruitingWoodM) < 0.005
      ? []
      : [`${signed(formatLength(fruitingWoodM, units))} of wood in fruiting light`]),
    ...(shoots.length === 0 ? [] : [`light: ${shoots.join(', ')}`]),
  ];
  return parts.length === 0 ? 'none in figs or light this season' : parts.join('; ');
}

interface Wording {
  readonly viewpoint: Viewpoint | null;
  readonly units: Units;
  readonly confidence: Confidence | null;
  /** Cautions already said. */
  readonly said: ReadonlySet<CautionKey>;
}

function cutLines(cut: Cut, n: number, { viewpoint, units, said, confidence }: Wording): string[] {
  const head = `${String(n).padStart(3)}. `;
  const indent = ' '.repeat(head.length);
  const cautions = cut.cautions.filter((key) => !said.has(key)).map((key) => cautionText[key]);
  const stands = standsText(cut, confidence, units);
  const price = cut.ifKept.fallBelow.length === 0 ? null : ifKeptText(cut.ifKept);
  const facts = [
    `Why: ${cut.reasons.map((reason) => reasonText(reason, units)).join(' ')}`,
    `Gain: ${gainWords(cut.gain, units)}.`,
    ...(price === null ? [] : [`If you keep it: ${price}`]),
    ...(stands === null ? [] : [`How sure: ${stands}`]),
    [`When: ${cut.when.from} to ${cut.when.to}.`, passText(cut)].filter((part) => part !== null).join(' '),
    ...cautions.map((caution) => `Caution: ${caution}`),
  ];
  return [
    '',
    ...wrapped(`${whatText(cut)}. ${placeText(cut, units, viewpoint)}`, lineWidth, head, indent),
    ...facts.flatMap((fact) => wrapped(fact, lineWidth, indent, `${indent}  `)),
  ];
}

/** Cautions that every cut carries: said once, on top. */
function sharedCautions(cuts: readonly Cut[]): CautionKey[] {
  const [first, ...rest] = cuts;
  return first?.cautions.filter((key) => rest.every(({ cautions }) => cautions.includes(key))) ?? [];
}

/** How far a better choice of what to keep can be away, by proof. */
function searchLines({ candidates, gap, agreed }: Plan['search']): string[] {
  if (candidates === 0 || gap === null) return [];
  const percent = formatDecimal(Math.ceil((1000 * gap) / (1 - gap)) / 10, 1);
  const proof =
    gap < 1e-6
      ? `No other choice among the ${candidates} to choose from is worth more: that is proved.`
      : `The search met no better choice among the ${candidates} to choose from; none can be worth over ${percent} % more, which --prove may narrow.`;
  const rest = agreed
    ? ''
    : ' Another choice may be as good: the search and the regrown shoots did not come to agree.';
  return ['', ...wrapped(`${proof}${rest}`, lineWidth)];
}

function countWords(cuts: readonly Cut[]): string {
  const count = cuts.length;
  if (count === 0) return 'Nothing needs cutting.';
  const all = `${count} ${count === 1 ? 'cut' : 'cuts'}, in the order of work`;
  const [now, later] = [cuts.filter(({ pass }) => pass === 1), cuts.filter(({ pass }) => pass === 2)];
  if (later[0] === undefined) return `${all}.`;
  return `${all}: ${now.length} of buds in a first pass, ${later.length} in a second from ${later[0].when.from}.`;
}

/** Cuts that stand in too few worlds, numbered on behind the others. */
function yourCallLines({ cuts, yourCall, confidence, score }: Plan, wording: Wording): string[] {
  if (yourCall.length === 0) return [];
  const head = confidence === null ? 'Your call, and in no figure above.' : yourCallText(confidence);
  const figs = score.withYourCall && formatDecimal(score.withYourCall.ripeFigs, 1);
  return [
    '',
    ...wrapped(`${head} With all of it done, too: ${figs} ripe figs expected.`, lineWidth),
    ...yourCall.flatMap((cut, i) => cutLines(cut, cuts.length + i + 1, wording)),
  ];
}

export function planText(plan: Plan, file: TreeFile, units: Units, energy: EnergyBasis): string {
  const { cuts, date, steps, search, choice, pinch, renewal, confidence, yourCall, score, remarks } = plan;
  const shared = sharedCautions([...cuts, ...yourCall]);
  const wording = { viewpoint: file.site.viewpoint, units, confidence, said: new Set(shared) };
  const range = confidence && rangeText(confidence);
  const [withPlan, without] = [score.plan, score.doNothing].map(({ ripeFigs }) => formatDecimal(ripeFigs, 1));
  const lines = [
    `${withPlan} ripe figs expected with this plan, ${without} if nothing is done.`,
    `${file.name}, ${file.site.name}, work of ${date}.`,
    ...wrapped(energyWords(energy), lineWidth),
    '',
    ...scoreLines(score, units),
    ...(range === null ? [] : ['', ...wrapped(range, lineWidth)]),
    ...choiceLines(choice),
    ...searchLines(search),
    ...stepLines(steps),
    '',
    countWords(cuts),
    ...shared.flatMap((key) => wrapped(`Caution: ${cautionText[key]}`, lineWidth, '', '  ')),
    ...cuts.flatMap((cut, i) => cutLines(cut, i + 1, wording)),
    ...yourCallLines(plan, wording),
    ...pinchLines(pinch),
    ...renewalLines(renewal, units, file.site.viewpoint),
    ...remarks.flatMap((remark) => ['', ...wrapped(`Note: ${remark}`, lineWidth, '', '  ')]),
  ];
  return `${lines.join('\n')}\n`;
}
