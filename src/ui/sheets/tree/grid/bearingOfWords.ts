/** A side given by its wind. */
import { type Wind, windDeg } from '../../../../geometry/world.ts';

const winds: Readonly<Record<string, Wind>> = {
  n: 'north',
  ne: 'north-east',
  e: 'east',
  se: 'south-east',
  s: 'south',
  sw: 'south-west',
  w: 'west',
  nw: 'north-west',
};

/** Degrees of "SE", "south-east" or "South east"; null for anything else. */
export function bearingOfWords(text: string): number | null {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '-');
  const wind = winds[plain] ?? Object.values(winds).find((one) => one === plain);
  return wind === undefined ? null : windDeg(wind);
}
