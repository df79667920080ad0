/**
 * The sky over a place as a round picture on a square of `size` x `size` dots. Equidistant zenith projection: the zenith is the middle, the
 * horizon the rim, and the distance from the middle is the angle from the zenith. Drawn as a map: **north at the top, east on the
 * right**. (One who lies on the back and looks up sees east on the left when north is overhead.)
 */
import type { Vec3 } from '../../geometry/vec.ts';

/** Place on the picture of a direction above the level: from -1 (west) to 1 (east), and from -1 (south) to 1 (north). */
export function skyPlace([x, y, z]: Vec3): readonly [toEast: number, toNorth: number] {
  const across = Math.hypot(x, z);
  if (across === 0) return [0, 0];
  const radius = Math.atan2(across, y) / (Math.PI / 2);
  return [(radius * x) / across, (-radius * z) / across];
}

/** The direction seen at a place of the picture; null outside the circle. */
export function directionAtPlace(toEast: number, toNorth: number): Vec3 | null {
  const radius = Math.hypot(toEast, toNorth);
  if (radius > 1) return null;
  const zenithAngle = (radius * Math.PI) / 2;
  if (radius === 0) return [0, 1, 0];
  const across = Math.sin(zenithAngle) / radius;
  return [toEast * across, Math.cos(zenithAngle), -toNorth * across];
}

export interface SkyDot {
  /** Row by row from the north, each row from the west: row * size + column. */
  readonly at: number;
  readonly toSky: Vec3;
  /** The dot's part of the half sphere, and of the light that a level sensor gets from an even sky; each adds up to 1. */
  readonly solidAngleShare: number;
  readonly cosineShare: number;
}

/** The dots whose middle lies in the circle. */
export function skyDots(size: number): readonly SkyDot[] {
  if (!(Number.isInteger(size) && size >= 2 && size <= 1024)) {
    throw new Error(`skyDots: a whole number of dots from 2 to 1024 is needed, got ${size}`);
  }
  const dots: { at: number; toSky: Vec3; solidAngle: number }[] = [];
  for (let at = 0; at < size * size; at++) {
    const toEast = (2 * ((at % size) + 0.5)) / size - 1;
    const toNorth = 1 - (2 * (Math.floor(at / size) + 0.5)) / size;
    const toSky = directionAtPlace(toEast, toNorth);
    if (toSky === null) continue;
    const zenithAngle = (Math.hypot(toEast, toNorth) * Math.PI) / 2;
    // A dot spans as much along the radius everywhere, but sin(angle) / angle of it across.
    dots.push({ at, toSky, solidAngle: zenithAngle === 0 ? 1 : Math.sin(zenithAngle) / zenithAngle });
  }
  const whole = dots.reduce((sum, { solidAngle }) => sum + solidAngle, 0);
  const wholeCosine = dots.reduce((sum, { solidAngle, toSky }) => sum + solidAngle * toSky[1], 0);
  return dots.map(({ at, toSky, solidAngle }) => ({
    at,
    toSky,
    solidAngleShare: solidAngle / whole,
    cosineShare: (solidAngle * toSky[1]) / wholeCosine,
  }));
}
