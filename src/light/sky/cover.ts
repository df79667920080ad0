/** Film or net above the whole place. */
import type { DayOfYear, IsoDate } from '../../season/site.ts';

export interface Cover {
  /** Share of PAR that passes, of beam and sky alike. */
  readonly passedFraction: number;
  /** Share of the beam passed that comes down as light of the sky. */
  readonly diffusingFraction: number;
  /** First and last day of the year on which it hangs, both included, also across New Year; null all year. */
  readonly dates: { readonly from: DayOfYear; readonly until: DayOfYear } | null;
}

/** Whether it hangs on a day. */
export function hangsOn({ dates }: Cover, date: IsoDate): boolean {
  if (dates === null) return true;
  const { from, until } = dates;
  const day = date.slice(5);
  return from <= until ? from <= day && day <= until : from <= day || day <= until;
}

/**
 * Light below the cover, as shares of that above it: of the beam what stays beam, and what of it joins the sky; of the sky what passes.
 * The same at every angle: films pass less of what comes in low, up to a tenth of the day (dropped). What it turns aside is laid over
 * the sky as the sky's own light.
 */
export function passedBy({ passedFraction, diffusingFraction }: Cover) {
  if (!(passedFraction >= 0 && passedFraction <= 1 && diffusingFraction >= 0 && diffusingFraction <= 1)) {
    throw new Error(`passedBy: shares of 0 to 1 are needed, got ${passedFraction} and ${diffusingFraction}`);
  }
  return {
    beam: passedFraction * (1 - diffusingFraction),
    beamToSky: passedFraction * diffusingFraction,
    sky: passedFraction,
  };
}
