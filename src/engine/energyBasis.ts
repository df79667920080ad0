/** What the light of an answer was made from. */
import type { Weather } from '../light/sky/dayLight.ts';
import type { Climate } from '../season/site.ts';

export interface EnergyBasis {
  /** Mean hours of radiation, monthly clearness or monthly sunshine, or the formula of a cloudless day. */
  readonly basis: 'hourly' | 'clearness' | 'sunshine' | 'clear sky';
  /** Name of the weather file or of the formula; of monthly figures whether they were measured, published or guessed. */
  readonly source: string;
}

export function energyBasis({ hourly, clearness, source }: Climate, weather: Weather): EnergyBasis {
  if (weather === 'clear') return { basis: 'clear sky', source: 'Haurwitz 1945' };
  if (hourly !== undefined) return { basis: 'hourly', source: hourly.source };
  return { basis: clearness === undefined ? 'sunshine' : 'clearness', source };
}
