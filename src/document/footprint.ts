/** The ground that something upright stands on. */
import { deg, rad } from '../geometry/world.ts';
import type { Surrounding } from './treeFile.ts';

/** Everything that stands but crowns, whose ground is an ellipse. */
export type Solid = Exclude<Surrounding, { kind: 'crown' }>;
type EastNorth = readonly [eastM: number, northM: number];

/** A rectangle, its half sizes east-west and north-south before it is turned clockwise about its middle. */
export interface Footprint {
  readonly middle: EastNorth;
  readonly halfM: EastNorth;
  readonly turnedDeg: number;
}

export function footprintOf(solid: Solid): Footprint {
  if (solid.kind === 'box') {
    const [eastWestM, northSouthM] = solid.sizeM;
    return {
      middle: solid.centre,
      halfM: [eastWestM / 2, northSouthM / 2],
      turnedDeg: solid.turnedDeg,
    };
  }
  const { from, to, thicknessM } = solid;
  const [east, north] = [to[0] - from[0], to[1] - from[1]];
  return {
    middle: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
    halfM: [Math.hypot(east, north) / 2, thicknessM / 2],
    turnedDeg: deg(Math.atan2(-north, east)),
  };
}

/** From a place to the nearest point of the ground, metres east and north; [0, 0] from within. */
export function wayTo({ middle, halfM, turnedDeg }: Footprint, [east, north]: EastNorth): EastNorth {
  const [dx, dy] = [east - middle[0], north - middle[1]];
  const [c, s] = [Math.cos(rad(turnedDeg)), Math.sin(rad(turnedDeg))];
  const [x, y] = [dx * c - dy * s, dx * s + dy * c];
  const missing = (at: number, half: number): number => Math.max(-half, Math.min(half, at)) - at;
  const [mx, my] = [missing(x, halfM[0]), missing(y, halfM[1])];
  return [mx * c + my * s, my * c - mx * s];
}
