/** The radiation of a normal day at a site, from its monthly sunshine hours or clearness. */
import { dayOfYear, monthOf } from './calendar.ts';
import { diffuseShareOfMonth } from './diffuseShare.ts';
import { type DayOrbit, dayLengthH, dayOrbit, extraterrestrialMJM2Day } from './extraterrestrial.ts';
import { clearnessFromSunshine, sunshineFraction } from './globalRadiation.ts';
import type { Climate, IsoDate, Site } from './site.ts';

/** The day whose length stands for its month. */
export const middleOfMonth = (date: IsoDate): IsoDate => `${date.slice(0, 8)}15`;

export interface DayRadiation {
  readonly extraterrestrialMJM2: number;
  readonly globalMJM2: number;
  readonly diffuseMJM2: number;
  /** Of the month. */
  readonly clearness: number;
}

/**
 * A normal day. The sunshine of a month is set against the day length of its 15th, and the clearness and diffuse share that
 * follow hold for all its days: the diffuse fit is one for monthly means, and so a month's answer is made of that
 * month's figures alone. The price is a step between months, up to 12 % of the day where summer turns into a dull
 * autumn; radiation above the air changes smoothly from day to day.
 * @param orbits of the day and of the 15th of its month; FAO-56's own when left out
 */
export function dayRadiation(
  site: Pick<Site, 'latitudeDeg' | 'climate'>,
  date: IsoDate,
  orbits?: { readonly day: DayOrbit; readonly middle: DayOrbit },
): DayRadiation {
  const { latitudeDeg, climate } = site;
  const middle = orbits?.middle ?? dayOrbit(latitudeDeg, dayOfYear(middleOfMonth(date)));
  const clearness = clearnessOf(climate, monthOf(date), middle);
  const extraterrestrialMJM2 = extraterrestrialMJM2Day(latitudeDeg, dayOfYear(date), orbits?.day);
  const globalMJM2 = clearness * extraterrestrialMJM2;
  const diffuseMJM2 = globalMJM2 * diffuseShareOfMonth(clearness, middle.sunsetRad);
  return { extraterrestrialMJM2, globalMJM2, diffuseMJM2, clearness };
}

/** Of a month, 1 to 12. Throws where neither clearness nor sunshine is known. */
function clearnessOf({ clearness, sunshineH }: Climate, month: number, middle: DayOrbit): number {
  const known = clearness?.[month - 1];
  if (known !== undefined) return known;
  const hours = sunshineH?.[month - 1];
  if (hours === undefined)
    throw new Error('dayRadiation: sunshine hours or clearness are needed, got neither');
  return clearnessFromSunshine(sunshineFraction(hours, dayLengthH(middle.sunsetRad)));
}
