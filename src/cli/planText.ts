/** A plan as text: the answer first, the score beside doing nothing, then the cuts in the order of work. */
import type { TreeFile } from '../document/treeFile.ts';
import { formatArea, formatDecimal, formatLength, type Units } from '../geometry/measure.ts';
import { cautionText } from '../plan/cautions.ts';
import type { CautionKey, Cut, Gain } from '../plan/cut.ts';
import type { Plan } from '../plan/plan.ts';
import type { Score } from '../plan/score.ts';
import type { PlanReport } from './outputSchemas.ts';
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
      row('Figs on last year’s wood', ({ firstCropFigs }) => formatDecimal(firstCropFigs, 1)),
      row('Wood in fruiting light', ({ fruitingWoodM }) => formatLength(fruitingWoodM, units)),
      row('Shoots', ({ shootCount }) => `${shootCount}`),
      row('Shoots in deep shade', ({ deepShadeCount }) => `${deepShadeCount}`),
      row('Leaf area', ({ leafAreaM2 }) => formatArea(leafAreaM2, units)),
      row('Mean light, of open sky', ({ meanLight }) => `${formatDecimal(100 * meanLight, 0)} %`),
    ],
  );
}

function gainWords({ figs, fruitingWoodM, lights }: Gain, units: Units): string {
  const shoots = lights.map(
    ({ name, shareGain }) => `${name} ${signed(formatDecimal(100 * shareGain, 0))} %`,
  );
  return [
    `${signed(formatDecimal(figs, 1))} ripe figs`,
    `${signed(formatLength(fruitingWoodM, units))} of wood in fruiting light`,
    ...(shoots.length === 0 ? [] : [`light: ${shoots.join(', ')}`]),
  ].join('; ');
}

function cutLines(
  cut: Cut,
  words: PlanReport['cuts'][number],
  n: number,
  shared: ReadonlySet<CautionKey>,
  units: Units,
): string[] {
  const head = `${String(n).padStart(3)}. `;
  const indent = ' '.repeat(head.length);
  const cautions = cut.cautions.filter((key) => !shared.has(key)).map((key) => cautionText[key]);
  const facts = [
    `Why: ${words.reasons.join(' ')}`,
    `Gain: ${gainWords(cut.gain, units)}.`,
    `When: ${cut.when.from} to ${cut.when.to}.`,
    ...cautions.map((caution) => `Caution: ${caution}`),
  ];
  return [
    ...wrapped(`${head}${words.what}. ${words.where}`, lineWidth, indent),
    ...facts.flatMap((fact) => wrapped(indent + fact, lineWidth, `${indent}  `)),
  ];
}

/** Cautions that every cut carries: said once, on top. */
function sharedCautions(cuts: readonly Cut[]): CautionKey[] {
  const [first, ...rest] = cuts;
  return first?.cautions.filter((key) => rest.every(({ cautions }) => cautions.includes(key))) ?? [];
}

export function planText(report: PlanReport, plan: Plan, file: TreeFile, units: Units): string {
  const { doNothing, plan: planned } = plan.score;
  const shared = sharedCautions(plan.cuts);
  const seen = new Set(shared);
  const count = plan.cuts.length;
  const lines = [
    `${formatDecimal(planned.ripeFigs, 1)} ripe figs expected with this plan, ${formatDecimal(doNothing.ripeFigs, 1)} if nothing is done.`,
    `${file.name}, ${file.site.name}, work of ${plan.date}.`,
    '',
    ...scoreLines(plan.score, units),
    '',
    ...(count === 0
      ? ['Nothing needs cutting.']
      : [`${count} ${count === 1 ? 'cut' : 'cuts'}, in the order of work.`]),
    ...shared.flatMap((key) => wrapped(`Caution: ${cautionText[key]}`, lineWidth, '  ')),
    ...plan.cuts.flatMap((cut, i) => [
      '',
      ...cutLines(cut, report.cuts[i] as PlanReport['cuts'][number], i + 1, seen, units),
    ]),
    ...(plan.remarks.length === 0
      ? []
      : ['', ...plan.remarks.flatMap((remark) => wrapped(`Note: ${remark}`, lineWidth, '  '))]),
  ];
  return `${lines.join('\n')}\n`;
}
