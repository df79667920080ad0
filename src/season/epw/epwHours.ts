/** The hours of one year as a weather file gives them. */

/** Where the figures were taken. */
export interface EpwPlace {
  readonly name: string;
  /** Who made the file, as it says itself; may be empty. */
  readonly madeBy: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** Standard time minus universal time, hours. */
  readonly zoneH: number;
  readonly elevationM: number;
}

/** Days of a leap year times hours: entry 24 d + h is hour h + 1 of day d, which ends at h + 1 o'clock. Day 59 is 29 February. */
export const epwSlots = 366 * 24;

/** Figures by slot, NaN where there is none. */
export interface EpwHours {
  readonly place: EpwPlace;
  /** Of the row; 0 where there is no row. */
  readonly year: Int32Array;
  readonly temperatureC: Float64Array;
  /** Of the hour, Wh m-2: on the level, square to the sun, on the level from the sky alone. */
  readonly globalWhM2: Float64Array;
  readonly directNormalWhM2: Float64Array;
  readonly diffuseWhM2: Float64Array;
}

export type EpwRefusal = { readonly ok: false; readonly reason: string; readonly where: string };

const monthDays = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
const monthStart: readonly number[] = monthDays.map((_, m) =>
  monthDays.slice(0, m).reduce((sum: number, days) => sum + days, 0),
);

/** First day and number of days of a month, 0 to 11, in a leap year. */
export const monthSpan = (month: number): { readonly first: number; readonly days: number } => ({
  first: monthStart[month] as number,
  days: monthDays[month] as number,
});

/** Month (0 to 11) and day (from 1) of a day of a leap year. */
export function monthAndDay(day: number): { readonly month: number; readonly day: number } {
  let month = 11;
  while ((monthStart[month] as number) > day) month--;
  return { month, day: day - (monthStart[month] as number) + 1 };
}
