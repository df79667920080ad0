/** How the light spreads over the shoots and over the height of the crown, as two small tables. */
import type { ShootLight } from '../engine/reports.ts';
import { type Band, meanLight, spreadByHeight, spreadByLight } from '../engine/spread.ts';
import { formatDecimal, formatLength, type Units } from '../geometry/measure.ts';
import { type Column, table } from './table.ts';

const percent = (share: number): string => `${formatDecimal(100 * share, 0)} %`;

/** Marks of the longest bar. */
const longestBar = 30;

function lightLines(shoots: readonly ShootLight[]): string[] {
  const bands = spreadByLight(shoots);
  const most = Math.max(...bands.map(({ rows }) => rows.length));
  const marksOf = (count: number): string =>
    '#'.repeat(Math.ceil((longestBar * count) / Math.max(most, longestBar)));
  const nameOf = ({ from, to }: Band<ShootLight>): string =>
    Number.isFinite(to) ? `${formatDecimal(100 * from, 0)} to ${percent(to)}` : `${percent(from)} or more`;
  const columns: Column[] = [
    { title: 'Light', align: 'left' },
    { title: 'Shoots', align: 'right' },
    { title: '', align: 'left' },
  ];
  return table(
    columns,
    bands.map((band) => [nameOf(band), String(band.rows.length), marksOf(band.rows.length)]),
  );
}

function heightLines(shoots: readonly ShootLight[], units: Units): string[] {
  const heights = new Map(shoots.map(({ id, heightM }) => [id, heightM]));
  const bands = spreadByHeight(shoots, heights, units).filter(({ rows }) => rows.length > 0);
  const columns: Column[] = [
    { title: 'Height', align: 'left' },
    { title: 'Shoots', align: 'right' },
    { title: 'Light', align: 'right' },
    { title: 'Sun h', align: 'right' },
  ];
  const rows = bands.map((band) => {
    const sunHours = band.rows.reduce((sum, shoot) => sum + shoot.sunHours, 0) / band.rows.length;
    return [
      `${formatLength(band.from, units)} to ${formatLength(band.to, units)}`,
      String(band.rows.length),
      percent(meanLight(band.rows) ?? 0),
      formatDecimal(sunHours, 1),
    ];
  });
  return table(columns, rows);
}

/** Both, a blank line between them; nothing without shoots. */
export function spreadLines(shoots: readonly ShootLight[], units: Units): string[] {
  return shoots.length === 0 ? [] : [...lightLines(shoots), '', ...heightLines(shoots, units)];
}
