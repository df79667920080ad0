/** Where the tree stands, as far as sky, warmth and frost are concerned. */

/** Twelve numbers, January first. */
export type Monthly = readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];

/**
 * Mean radiation on the level by month and hour of true solar time, W m-2: `[month][hour]`, 12 rows of 24, January first;
 * hour h runs from h to h + 1, and the sun stands highest at 12. A month's mean of its days.
 */
export interface HourlyRadiation {
  /** What the figures were taken from, as shown to the grower. */
  readonly source: string;
  readonly globalWM2: readonly (readonly number[])[];
  /** From the sky alone, without the straight beam. */
  readonly diffuseWM2: readonly (readonly number[])[];
}

/** Sunshine or clearness is needed; of what is given, hourly radiation rules over clearness, and that over sunshine. */
export interface Climate {
  /** Where these figures come from, as shown to the grower. */
  readonly source: 'measured' | 'published' | 'guess';
  /** Mean of the day, degrees C. */
  readonly meanC: Monthly;
  /** Mean of the daily minima, degrees C. */
  readonly minC: Monthly;
  /** Bright sunshine, hours a day. */
  readonly sunshineH?: Monthly | undefined;
  /** Share of the radiation above the air that reaches the ground. */
  readonly clearness?: Monthly | undefined;
  readonly hourly?: HourlyRadiation | undefined;
}

/** A day of any year, as "MM-DD". */
export type DayOfYear = string;
/** A calendar day, as "YYYY-MM-DD" (ISO 8601). */
export type IsoDate = string;

export interface Site {
  readonly name: string;
  /** North positive. */
  readonly latitudeDeg: number;
  /** East positive. */
  readonly longitudeDeg: number;
  /** IANA name, for clock times only; the sun is computed in universal time. */
  readonly timeZone: string;
  readonly elevationM: number;
  readonly climate: Climate;
  /** Normal dates of the last frost of spring and the first of autumn; null where it does not freeze. */
  readonly frost: { readonly lastOfSpring: DayOfYear; readonly firstOfAutumn: DayOfYear } | null;
}

/** First and last day, both included. */
export interface Period {
  readonly from: IsoDate;
  readonly to: IsoDate;
}
