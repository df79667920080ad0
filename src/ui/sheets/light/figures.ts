/** What the light report comes to: the figures of the headline, the legend and the table. */
import type { LightReport, ShootLight } from '../../../engine/reports.ts';
import { pointAt } from '../../../geometry/path.ts';
import type { Canopy } from '../../../growth/canopy.ts';
import type { Spotlight } from '../../state/spotlight.ts';
import type { ShownTime } from '../../state/timeWork.ts';
import type { LightClass, LightScale } from '../../theme/lightScale.ts';

/** One shoot over the season, a month or an hour. */
export interface ShootRow {
  readonly id: string;
  readonly name: string;
  readonly lightFraction: number;
  /** Null while it is not known for that time. */
  readonly standardError: number | null;
  /** mol m-2 in a mean day, or in the hour of a mean day. */
  readonly parMolM2: number;
  /** Null while it is not known for that time. */
  readonly leafLightFraction: number | null;
  /** All that is told of the shoot; null while it is not known for that time. */
  readonly all: ShootLight | null;
}

const rowOf = (shoot: ShootLight): ShootRow => ({
  id: shoot.id,
  name: shoot.name,
  lightFraction: shoot.lightFraction,
  standardError: shoot.standardError,
  parMolM2: shoot.parMolM2Day,
  leafLightFraction: shoot.leafLightFraction,
  all: shoot,
});

/** What the season's report tells of one time; null when nothing. */
function lightAt(shoot: ShootLight, time: ShownTime): { lightFraction: number; parMolM2: number } | null {
  if (time.by === 'hour') return shoot.byHour.find((h) => h.solarHour === time.solarHour) ?? null;
  const light = shoot.byMonth.find((m) => m.month === time.month);
  return light === undefined ? null : { lightFraction: light.lightFraction, parMolM2: light.parMolM2Day };
}

/**
 * Rows of the table, darkest first.
 * @param time null for the whole season
 * @param weighed the report of that time alone, once it is there: it adds the doubt and all that is finer
 */
export function shootRows(
  season: LightReport,
  time: ShownTime | null,
  weighed: LightReport | null,
): ShootRow[] {
  const coarse = (shoot: ShootLight): ShootRow[] => {
    const light = time === null ? null : lightAt(shoot, time);
    if (light === null) return [];
    const { lightFraction, parMolM2 } = light;
    return [
      { ...rowOf(shoot), lightFraction, parMolM2, standardError: null, leafLightFraction: null, all: null },
    ];
  };
  const rows =
    time === null ? season.shoots.map(rowOf) : (weighed?.shoots.map(rowOf) ?? season.shoots.flatMap(coarse));
  return rows.sort((a, b) => a.lightFraction - b.lightFraction);
}

/** The times of the season that the slider runs over: its months in order, or the hours with light. */
export function timesIn(report: LightReport, by: ShownTime['by']): ShownTime[] {
  const shoot = report.shoots[0];
  if (shoot === undefined) return [];
  return by === 'month'
    ? shoot.byMonth.map(({ month }) => ({ by, month }))
    : shoot.byHour.map(({ solarHour }) => ({ by, solarHour }));
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
