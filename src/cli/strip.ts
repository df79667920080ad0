/** The strip of a day as text: when the sun falls on each shoot. */
import type { TreeFile } from '../document/treeFile.ts';
import type { DayReport, DayShoot, DayStep } from '../engine/look.ts';
import { formatDecimal } from '../geometry/measure.ts';
import { energyWords } from './energyWords.ts';
import { leafWords } from './leafWords.ts';
import { type Column, table, wrapped } from './table.ts';

/** Ten-minute steps in one place of the strip. */
const stepsAPlace = 2;
/** Marks for the share of a shoot's nodes in direct sun. */
const marks = [
  { from: 0.5, mark: '#' },
  { from: 0.2, mark: '+' },
  { from: 1e-9, mark: '-' },
] as const;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** The steps' numbers put together in places; places begin at even twenty minutes of solar time. */
function places(steps: readonly DayStep[]): number[][] {
  const found = new Map<number, number[]>();
  steps.forEach(({ solarHour }, s) => {
    const place = Math.floor((solarHour * 6) / stepsAPlace);
    const known = found.get(place);
    if (known === undefined) found.set(place, [s]);
    else known.push(s);
  });
  return [...found.values()];
}

const stripOf = ({ sunlit }: DayShoot, inPlaces: readonly (readonly number[])[]): string =>
  inPlaces
    .map((steps) => {
      const share = mean(steps.map((s) => sunlit[s] as number));
      return marks.find(({ from }) => share >= from)?.mark ?? '.';
    })
    .join('');

/** Clock hours over the strip, each at the first place that begins in it; those that would touch are left out. */
function hoursOver(steps: readonly DayStep[], inPlaces: readonly (readonly number[])[]): string {
  let line = '';
  let last = '';
  inPlaces.forEach(([first], place) => {
    const hour = String(Number((steps[first as number] as DayStep).clock.slice(0, 2)));
    const isNew = hour !== last && last !== '';
    last = hour;
    if (isNew && (line === '' || line.length < place)) line = line.padEnd(place) + hour;
  });
  return line;
}

const clockIn = ({ steps }: DayReport, at: 'first' | 'last'): string =>
  steps.at(at === 'first' ? 0 : -1)?.clock ?? '';

export function stripText(report: DayReport, file: TreeFile): string {
  const { date, shoots, steps, dayLengthH, openParMolM2Day, energy } = report;
  const inPlaces = places(steps);
  const columns: Column[] = [
    { title: 'Shoot', align: 'left' },
    { title: 'Sun h', align: 'right' },
    { title: 'mol/m²', align: 'right' },
    { title: hoursOver(steps, inPlaces), align: 'left' },
  ];
  const sunniestLast = [...shoots].sort((a, b) => a.sunHours - b.sunHours || (a.name < b.name ? -1 : 1));
  const rows = sunniestLast.map((shoot) => [
    shoot.name,
    formatDecimal(shoot.sunHours, 1),
    formatDecimal(shoot.parMolM2Day, 1),
    stripOf(shoot, inPlaces),
  ]);
  const lines = [
    shoots.length === 0
      ? 'There are no shoots in leaf.'
      : `Direct sun on ${shoots.length} shoots on ${date}: from ${clockIn(report, 'first')} to ${clockIn(report, 'last')} by the clock (${file.site.timeZone}), ${formatDecimal(dayLengthH, 1)} hours in the open.`,
    `${file.name}, ${file.site.name}. Open sky: ${formatDecimal(openParMolM2Day, 1)} mol/m² of PAR in the day.`,
    energyWords(energy),
    ...leafWords(report.leafSeason).flatMap((line) => wrapped(line, 118)),
    '',
    ...(shoots.length === 0 ? [] : [...table(columns, rows), '']),
    'Each mark is 20 minutes: # half of the shoot’s nodes or more in direct sun, + a fifth or more, - fewer, . none.',
    'Sun h: hours of direct sun, mean of the nodes, clouds left out of account. mol/m²: PAR of the day with clouds.',
    'An estimate from a sketch, its leaves placed by rule.',
  ];
  return `${lines.join('\n')}\n`;
}
