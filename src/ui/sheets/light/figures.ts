/** What the light report comes to: the figures of the headline, the legend and the table. */
import type { LightReport, ShootLight } from '../../../engine/reports.ts';
import { pointAt } from '../../../geometry/path.ts';
import type { Canopy } from '../../../growth/canopy.ts';
import type { Spotlight } from '../../state/spotlight.ts';
import type { LightClass, LightScale } from '../../theme/lightScale.ts';

/** One shoot over the season or over a month. */
export interface ShootRow {
  readonly id: string;
  readonly name: string;
  readonly lightFraction: number;
  /** Null while it is not known for that month. */
  readonly standardError: number | null;
  readonly parMolM2Day: number;
  /** Null while it is not known for that month. */
  readonly leafLightFraction: number | null;
}

/**
 * Rows of the table, darkest first.
 * @param month 1 to 12, or null for the whole season
 * @param weighed the report of that month alone, once it is there: it adds the doubt
 */
export function shootRows(
  season: LightReport,
  month: number | null,
  weighed: LightReport | null,
): ShootRow[] {
  const ofMonth = (shoot: ShootLight): ShootRow[] => {
    const { id, name } = shoot;
    const light = shoot.byMonth.find((m) => m.month === month);
    return light === undefined ? [] : [{ ...light, id, name, standardError: null, leafLightFraction: null }];
  };
  const source = month === null ? season.shoots : (weighed?.shoots ?? season.shoots.flatMap(ofMonth));
  return [...source].sort((a, b) => a.lightFraction - b.lightFraction);
}

/** Months that the season touches, in its own order. */
export function monthsIn(report: LightReport): number[] {
  return report.shoots[0]?.byMonth.map((m) => m.month) ?? [];
}

export interface ClassCount {
  readonly lightClass: LightClass;
  readonly count: number;
}

/** Where on the scale the shoots of a class are to be found; the brightest class has no upper end. */
export const spotOf = ({ from, to }: LightClass): Spotlight => ({
  by: 'light',
  from,
  to: to === 1 ? Number.POSITIVE_INFINITY : to,
});

export function countByClass(rows: readonly ShootRow[], scale: LightScale): ClassCount[] {
  return scale.classes.map((lightClass) => ({
    lightClass,
    count: rows.filter((row) => scale.classOf(row.lightFraction) === lightClass).length,
  }));
}

/**
 * Shoots of the inner crown: their middle is nearer to the crown's upright axis than half of the farthest
 * shoot's. Our choice, used for the words of the headline alone.
 */
export function innerShoots(canopy: Canopy): ReadonlySet<string> {
  const middles = canopy.shoots.map((shoot) => ({
    id: shoot.id,
    point: pointAt(shoot.path, shoot.lengthM / 2),
  }));
  const mean = (axis: 0 | 2) =>
    middles.reduce((sum, m) => sum + m.point[axis], 0) / Math.max(1, middles.length);
  const [x, z] = [mean(0), mean(2)];
  const farM = (point: readonly [number, number, number]) => Math.hypot(point[0] - x, point[2] - z);
  const crownM = Math.max(0, ...middles.map((m) => farM(m.point)));
  return new Set(middles.filter((m) => farM(m.point) < crownM / 2).map((m) => m.id));
}
