/** Visible text of the day on the Light sheet. */
import { wind } from '../../../geometry/world.ts';

export const dayWords = {
  title: 'One day',
  date: 'Day',
  noSun: 'The sun does not rise on this day.',
  clock: (clock: string) => `${clock} by the clock there`,
  sunStands: (bearingDeg: number, altitudeDeg: number) =>
    `Sun in the ${wind(bearingDeg)}, ${Math.round(altitudeDeg)}° high`,
  fromSun: 'See the tree from the sun',
  inSun: (sunlit: number, all: number, clock: string) =>
    `At ${clock} the sun falls on ${sunlit} of ${all} shoots.`,
  asStageShows:
    'On the stage a leaf is yellow when the sun reaches its foot, where the light of its node is measured, and grey when it does not.',
  asSunSees:
    'From the sun you see what is lit then, and nothing else. The colours tell its light over the season.',
  legend: 'Direct sun',
  inSunNow: 'sun',
  inShadeNow: 'shade',
  strip: 'Sun and shade through the day',
  columns: { shoot: 'Shoot', strip: 'In the sun by the hour', hours: 'Sun' },
  node: (node: number) => `Node ${node}`,
  riseAndSet: (rise: string, set: string) => `Sun from ${rise} to ${set}, by the clock there.`,
  openDay: (hours: string, mol: string) =>
    `Open ground can have ${hours} h of sun; in the mean weather of that day it gets ${mol} mol m⁻² of light for growth (PAR).`,
  key: 'Yellow is sun, paler where only some nodes of the shoot have it; grey is shade. Tap a time to see it on the tree, a name to see its nodes. Leaves are those of full leaf.',
  bare: 'On this day the tree is taken to be bare. The figures are those of a tree in full leaf: it is lighter then.',
} as const;
