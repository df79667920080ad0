/** The light of a period at a place, with its months and its hours. */
import type { CellLight } from '../light/directions.ts';
import { cellLightOf, inBoxes, type SkyOver } from '../light/sky/cellLight.ts';
import type { Weather } from '../light/sky/dayLight.ts';
import type { Horizon } from '../light/sky/horizon.ts';
import { type LevelLight, levelLight, together } from '../light/sky/levelLight.ts';
import type { SkyKind } from '../light/sky/skyEnergy.ts';
import type { PlanInput } from '../plan/input.ts';
import { monthOf, monthsOf } from '../season/calendar.ts';
import type { Period } from '../season/site.ts';

/** The light that is asked for. */
export interface Asked {
  readonly period: Period;
  readonly weather: Weather;
  readonly sky: SkyKind;
  /** Only this hour of each day, 0 to 23 in solar time; null for the whole days. */
  readonly solarHour: number | null;
}

export interface LightOfPeriod {
  readonly whole: CellLight;
  /** In order of time; a month of two different years is there twice. */
  readonly months: readonly { readonly month: number; readonly days: number; readonly light: CellLight }[];
  /** The hours asked for in which there is light. */
  readonly hours: readonly { readonly solarHour: number; readonly light: CellLight }[];
  /** Hours in which the sun is above the level on a mean day, per box of the beam grid. */
  readonly sunH: Float64Array;
  /** Of a pot that is turned: the same of the days of each pose, and their share of all days. */
  readonly poses: readonly { readonly sunH: Float64Array; readonly daysShare: number }[] | null;
  /** What hides the low sky; null for an open horizon. */
  readonly horizon: Horizon | null;
}

const allHours = Array.from({ length: 24 }, (_, hour) => hour);

function skyOver({ site }: PlanInput, { sky }: Asked, solarHour: number | null): SkyOver {
  const over = { latitudeDeg: site.latitudeDeg, groundReflectance: site.groundReflectance, skyKind: sky };
  return solarHour === null ? over : { ...over, solarHour };
}

/** The light alone, without its months and hours. */
export function lightOf(input: PlanInput, asked: Asked): CellLight {
  const { period, weather, solarHour } = asked;
  return cellLightOf(levelLight(input.site, period, weather), skyOver(input, asked, solarHour));
}

/** Hands over after each month. */
export function* lightOfPeriodSteps(input: PlanInput, asked: Asked): Generator<void, LightOfPeriod, unknown> {
  const { period, weather, solarHour } = asked;
  const parts: { readonly month: number; readonly level: LevelLight }[] = [];
  for (const part of monthsOf(period)) {
    parts.push({ month: monthOf(part.from), level: levelLight(input.site, part, weather) });
    yield;
  }
  const whole = together(parts.map(({ level }) => level));
  const lightAt = (level: LevelLight, hour: number | null): CellLight =>
    cellLightOf(level, skyOver(input, asked, hour));
  const hours = (solarHour === null ? allHours : [solarHour]).map((hour) => ({
    solarHour: hour,
    light: lightAt(whole, hour),
  }));
  const sunH = (level: LevelLight): Float64Array =>
    inBoxes(level.sunH, solarHour ?? undefined).map((hoursInBox) => hoursInBox / whole.days);
  const poses = whole.poses?.map((pose) => ({ sunH: sunH(pose), daysShare: pose.days / whole.days }));
  return {
    whole: lightAt(whole, solarHour),
    months: parts.map(({ month, level }) => ({ month, days: level.days, light: lightAt(level, solarHour) })),
    hours: hours.filter(({ light }) => light.openSkyParMolM2Day > 0),
    sunH: sunH(whole),
    poses: poses ?? null,
    horizon: whole.horizon,
  };
}
