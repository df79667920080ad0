/** The light of a tree as text: the answer first, then a line a shoot, the darkest first. */
import type { TreeFile } from '../document/treeFile.ts';
import type { LightReport, ShootLight, Threshold } from '../engine/reports.ts';
import { formatDecimal, type Units } from '../geometry/measure.ts';
import { energyWords } from './energyWords.ts';
import { leafWords } from './leafWords.ts';
import { spreadLines } from './spreadText.ts';
import { type Column, table, wrapped } from './table.ts';

const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const percent = (share: number, decimals = 0): string => formatDecimal(100 * share, decimals);

/** A standard error in percent, rounded up so that it is never shown as nothing. */
const doubt = (share: number): string => formatDecimal(Math.ceil(1000 * share) / 10, 1);

const lineWidth = 118;

const right = (title: string): Column => ({ title, align: 'right' });

/** A threshold without needless decimals: 27 %, 13.5 %. */
const threshold = (share: number): string => `${percent(share, 1).replace('.0', '')} %`;

function rowOf(shoot: ShootLight, months: readonly number[]): string[] {
  const monthly = months.map((month) => {
    const light = shoot.byMonth.find((entry) => entry.month === month);
    return light === undefined ? '' : percent(light.lightFraction);
  });
  return [
    shoot.name,
    `${percent(shoot.lightFraction)} %`,
    doubt(shoot.standardError),
    formatDecimal(shoot.parMolM2Day, 1),
    formatDecimal(shoot.sunHours, 1),
    `${percent(shoot.openSky.cosine)} %`,
    `${percent(shoot.leafLightFraction)} %`,
    ...monthly,
  ];
}

function answerOf({ shoots, thresholds }: LightReport): string {
  const [deepShare, fruitingShare] = [thresholds.deepShade.share, thresholds.fruitingLight.share];
  const deep = shoots.filter(({ lightFraction }) => lightFraction < deepShare).length;
  const fruiting = shoots.filter(({ lightFraction }) => lightFraction >= fruitingShare).length;
  if (shoots.length === 0) return 'There are no shoots in leaf in this period.';
  const verb = deep === 1 ? 'sits' : 'sit';
  const noun = shoots.length === 1 ? 'shoot' : 'shoots';
  return (
    `${deep} of ${shoots.length} ${noun} ${verb} in deep shade (below ${threshold(deepShare)} of open sky); ` +
    `${fruiting} in fruiting light (${threshold(fruitingShare)} or more).`
  );
}

/** Where a threshold is from. */
const sourceWords = ({ isSet, source }: Threshold): string => (isSet ? 'set by you' : source);

/** Shoots from the darkest to the lightest, those alike by name. */
const darkestFirst = (shoots: readonly ShootLight[]): ShootLight[] =>
  [...shoots].sort((a, b) => a.lightFraction - b.lightFraction || (a.name < b.name ? -1 : 1));

/** Months in the order in which the period runs through them. */
function monthsIn(shoots: readonly ShootLight[]): number[] {
  return [...new Set(shoots.flatMap(({ byMonth }) => byMonth.map(({ month }) => month)))];
}

/** The sky that was asked for, if it is not the even one. */
function skyWords(sky: LightReport['sky']): string {
  if (sky === 'uniform') return '';
  return ` Sky: ${typeof sky === 'number' ? `CIE ${sky}` : sky}.`;
}

export function lightText(report: LightReport, file: TreeFile, units: Units): string {
  const { shoots, period, sky, energy, parFactor, openSkyParMolM2Day, seed, rays, thresholds } = report;
  const months = monthsIn(shoots);
  const columns: Column[] = [
    { title: 'Shoot', align: 'left' },
    ...[
      'Light',
      '±',
      'mol/m²/d',
      'Sun h',
      'Sky',
      'Leaves',
      ...months.map((month) => monthNames[month - 1] ?? ''),
    ].map(right),
  ];
  const lines = [
    answerOf(report),
    `${file.name}, ${file.site.name}, ${period.from} to ${period.to}. Open sky: ${formatDecimal(openSkyParMolM2Day, 1)} mol/m²/d of PAR.${skyWords(sky)}`,
    ...wrapped(energyWords(energy), lineWidth),
    ...leafWords(report.leafSeason).flatMap((line) => wrapped(line, lineWidth)),
    '',
    ...(shoots.length === 0
      ? []
      : [
          ...table(
            columns,
            darkestFirst(shoots).map((shoot) => rowOf(shoot, months)),
          ),
          '',
          ...spreadLines(shoots, units),
          '',
        ]),
    'Light: share of open sky on a level sensor at the nodes, with its standard error of sampling (±, same unit) and as',
    'PAR a day. Sun h: hours of direct sun on a mean day, clouds left out of account. Sky: share of the sky a level sensor',
    'sees with nothing before it. Leaves: light on both faces per leaf area, as share of open sky. Months: light in %.',
    ...wrapped(
      `Fruiting light, ${threshold(thresholds.fruitingLight.share)}: ${sourceWords(thresholds.fruitingLight)}.`,
      lineWidth,
    ),
    `PAR: ${formatDecimal(parFactor.molPerMJ, 2)} mol for each MJ of sunlight; figures in print run from ${formatDecimal(parFactor.low, 2)} to ${formatDecimal(parFactor.high, 2)}.`,
    `An estimate from a sketch. Seed ${seed}, ${rays} rays.`,
  ];
  return `${lines.join('\n')}\n`;
}
