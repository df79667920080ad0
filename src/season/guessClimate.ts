/** A climate for a grower who knows no figures of the place. */
import { dayLengthH, dayOrbit } from './extraterrestrial.ts';
import type { Climate, Monthly } from './site.ts';

export type ClimateKind = 'maritime' | 'continental' | 'mediterranean' | 'humid subtropical';

/** Monthly means and sunshine. */
export type GuessedClimate = Climate & { readonly sunshineH: Monthly };

interface Habit {
  /** Mean of the year at 40 degrees of latitude, and how much colder it gets with each degree towards the pole. */
  readonly yearAt40C: number;
  readonly perDegreeC: number;
  /** Warmest month over the mean of the year. */
  readonly summerOverYearC: number;
  /** Mean of the day over its minimum. */
  readonly dayOverMinC: number;
  /** Bright sunshine over day length. */
  readonly summerSunshineFraction: number;
  readonly winterSunshineFraction: number;
}

/** Our choice, after what such climates are known for; of no one place. */
const habits: Readonly<Record<ClimateKind, Habit>> = {
  maritime: {
    yearAt40C: 14.5,
    perDegreeC: 0.4,
    summerOverYearC: 6.5,
    dayOverMinC: 3.5,
    summerSunshineFraction: 0.42,
    winterSunshineFraction: 0.25,
  },
  continental: {
    yearAt40C: 11.8,
    perDegreeC: 0.45,
    summerOverYearC: 12.5,
    dayOverMinC: 5,
    summerSunshineFraction: 0.6,
    winterSunshineFraction: 0.38,
  },
  mediterranean: {
    yearAt40C: 16,
    perDegreeC: 0.6,
    summerOverYearC: 8.5,
    dayOverMinC: 5,
    summerSunshineFraction: 0.78,
    winterSunshineFraction: 0.48,
  },
  'humid subtropical': {
    yearAt40C: 13,
    perDegreeC: 0.8,
    summerOverYearC: 10,
    dayOverMinC: 5,
    summerSunshineFraction: 0.57,
    winterSunshineFraction: 0.48,
  },
};

/** The latitudes for which the table was made; nearer the equator or a pole the warmth of the last of them is used. */
const [lowestDeg, highestDeg] = [25, 60] as const;
/** Months from New Year to the height of summer, north: about 20 July. */
const summerMonth = 6.7;
const middleDays = [15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349] as const;

const tenth = (value: number): number => Math.round(10 * value) / 10;

/**
 * Monthly figures from the latitude and the kind of climate alone, marked as a guess: a cosine over the year between
 * summer and winter, half a year later in the south, and sunshine as a share of the day length. Real places of a kind
 * differ by 3 degrees C and a fifth of the sunshine, mountains by more. Throws on a latitude that is none.
 */
export function guessClimate(latitudeDeg: number, kind: ClimateKind): GuessedClimate {
  if (!(Math.abs(latitudeDeg) <= 90)) {
    throw new Error(`guessClimate: a latitude within 90 degrees is needed, got ${latitudeDeg}`);
  }
  const habit = habits[kind];
  const warmthDeg = Math.min(highestDeg, Math.max(lowestDeg, Math.abs(latitudeDeg)));
  const yearC = habit.yearAt40C - habit.perDegreeC * (warmthDeg - 40);
  const { summerSunshineFraction: bright, winterSunshineFraction: dull } = habit;
  const months = middleDays.map((day, m) => {
    const lateMonths = summerMonth + (latitudeDeg < 0 ? 6 : 0);
    const summer = Math.cos((2 * Math.PI * (m + 0.5 - lateMonths)) / 12);
    const meanC = yearC + habit.summerOverYearC * summer;
    const fraction = (bright + dull) / 2 + ((bright - dull) / 2) * summer;
    const sunshineH = fraction * dayLengthH(dayOrbit(latitudeDeg, day).sunsetRad);
    return { meanC: tenth(meanC), minC: tenth(meanC - habit.dayOverMinC), sunshineH: tenth(sunshineH) };
  });
  const monthly = (of: 'meanC' | 'minC' | 'sunshineH'): Monthly =>
    months.map((month) => month[of]) as unknown as Monthly;
  return { source: 'guess', meanC: monthly('meanC'), minC: monthly('minC'), sunshineH: monthly('sunshineH') };
}
