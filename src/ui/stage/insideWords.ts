/** Visible text of what one sees into the crown by. */
import { formatLength, type Units } from '../../geometry/measure.ts';
import { limitPercent } from '../sheets/light/words.ts';

export const insideWords = {
  title: 'See inside',
  group: 'See into the crown',
  findShade: 'Find the shade',
  findShadeTitle: 'Leaves with light enough to fruit are drawn faintly',
  cutAway: 'Open the near side',
  cutAwayTitle: 'Leaves before the trunk are left out, from wherever you look',
  from: 'From',
  upTo: 'Up to',
  all: 'Show all leaves',
  saidFaint: (limit: number) => `Faint: ${limitPercent(limit)} % and more`,
  saidCutAway: 'Near side left out',
  saidHeights: (from: string, to: string) => `Leaves only from ${from} to ${to} up`,
  height: (heightM: number, units: Units) => (heightM === 0 ? 'the ground' : formatLength(heightM, units)),
} as const;
