/** What hides the low sky for good: a skyline far off, and ground that rises. */
import type { Vec3 } from '../../geometry/vec.ts';
import { bearingDeg, direction, elevationDeg } from '../../geometry/world.ts';

/** As a site has it. */
export interface HorizonSite {
  readonly skyline?:
    | {
        /** It is as bright as level ground of this reflectance under the open sky. */
        readonly reflectance: number;
        readonly points: readonly SkylinePoint[];
      }
    | undefined;
  readonly slope?: { readonly slopeDeg: number; readonly fallsToDeg: number } | undefined;
}

export interface SkylinePoint {
  readonly bearingDeg: number;
  /** Above the level, degrees. */
  readonly heightDeg: number;
}

/** As directions are held against it. */
export interface Horizon {
  /** By rising bearing, each once; straight in between and round past north. Empty: none. */
  readonly skyline: readonly SkylinePoint[];
  readonly skylineReflectance: number;
  /** Upward normal of the slope, whose own ground hides what lies below its plane; null on the level. */
  readonly slopeNormal: Vec3 | null;
}

/** Null where nothing hides the sky above the level. Throws on figures that are none. */
export function horizonOf({ skyline, slope }: HorizonSite): Horizon | null {
  const points = [...(skyline?.points ?? [])].sort((a, b) => a.bearingDeg - b.bearingDeg);
  const numbers = points.flatMap((point) => [point.bearingDeg, point.heightDeg]);
  if (slope !== undefined) numbers.push(slope.slopeDeg, slope.fallsToDeg);
  const bad = numbers.find((number) => !Number.isFinite(number));
  if (bad !== undefined) throw new Error(`horizonOf: bearings and heights must be finite, got ${bad}`);
  const isSloping = slope !== undefined && slope.slopeDeg > 0;
  if (points.every(({ heightDeg }) => heightDeg <= 0) && !isSloping) return null;
  return {
    skyline: points,
    skylineReflectance: skyline?.reflectance ?? 0,
    slopeNormal: isSloping ? direction(slope.fallsToDeg, 90 - slope.slopeDeg) : null,
  };
}

/** Height of the skyline at a bearing, degrees above the level. */
export function skylineHeightDeg(skyline: readonly SkylinePoint[], bearing: number): number {
  const next = skyline.findIndex((point) => point.bearingDeg >= bearing);
  const after = skyline[next < 0 ? 0 : next];
  const before = skyline[(next <= 0 ? skyline.length : next) - 1];
  if (after === undefined || before === undefined) return 0;
  const span = (after.bearingDeg - before.bearingDeg + 360) % 360;
  if (span === 0) return after.heightDeg;
  const share = ((bearing - before.bearingDeg + 360) % 360) / span;
  return before.heightDeg + share * (after.heightDeg - before.heightDeg);
}

/**
 * What stands in a direction above the level. Both are taken to be so far off that they look the same from all of the tree. Where a
 * slope and a skyline hide the same sky, the slope is the nearer.
 */
export function hiddenBy({ skyline, slopeNormal }: Horizon, toSky: Vec3): 'slope' | 'skyline' | null {
  if (slopeNormal !== null) {
    const [x, y, z] = slopeNormal;
    if (x * toSky[0] + y * toSky[1] + z * toSky[2] < 0) return 'slope';
  }
  if (skyline.length === 0) return null;
  return elevationDeg(toSky) < skylineHeightDeg(skyline, bearingDeg(toSky)) ? 'skyline' : null;
}
