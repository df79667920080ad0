/** From where the tree is seen, in words. */
import type { Vec3 } from '../../geometry/vec.ts';
import { bearingDeg, elevationDeg, wind } from '../../geometry/world.ts';
import type { FlatSide } from '../scene/framing.ts';
import type { StageView } from '../scene/stageModel.ts';

/** An eye higher than this above the level looks from above too, degrees. Our choice. */
const highDeg = 35;

const fromSide = (side: FlatSide): string => (side === 'above' ? 'from above' : `from the ${side}`);
const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const viewWords = {
  looking: 'Look from',
  /** Short names under a thumb. */
  short: { north: 'N', east: 'E', south: 'S', west: 'W', above: 'Top', free: 'Free' },
  long: { north: 'North', east: 'East', south: 'South', west: 'West', above: 'Above', free: 'Free' },
  second: 'Second view',
  foldSecond: 'Fold the second view away',
  unfoldSecond: 'Show the second view',
  makeLarge: 'Look from there',
  secondFrom: (side: FlatSide) => `Second view, ${fromSide(side)}. Look from there`,
  secondShort: (side: FlatSide) => sentence(fromSide(side)),
  /** @param facing unit vector to the eye @param right unit vector to the right of the picture */
  seen(side: StageView | null, facing: Vec3, right: Vec3): string {
    if (side === 'above') return `From above, ${wind(bearingDeg(right) - 90)} at the top`;
    const from = `From the ${wind(bearingDeg(facing))}`;
    if (side === 'free' || side === null) return elevationDeg(facing) > highDeg ? `${from} and above` : from;
    return `${from}, ${wind(bearingDeg(right))} on the right`;
  },
} as const;
