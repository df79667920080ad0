/** Rays from leaves to the ground, sorted by the zone in which they come down. */
import type { Vec3 } from '../../geometry/vec.ts';
import type { Direction, FaceLight } from '../directions.ts';
import type { Landing, LeafWave } from '../leafLedger.ts';
import { latticeFor } from '../trace/leafWave.ts';
import { type GroundZones, zoneAt, zoneCount } from './groundZones.ts';

export interface LandingInput {
  readonly wave: LeafWave;
  /** The wave's directions as they were traced, one for one: those of a pot that is turned are others in the world. */
  readonly traced: readonly Direction[];
  readonly zones: GroundZones;
  readonly faces: FaceLight;
  /** Number in `faces` of the patch of zone 0; the others follow. */
  readonly firstPatch: number;
}

/** Where rays of a lattice meet the ground, by their number in the window of a direction. */
function placesOf(
  wave: LeafWave,
  direction: Direction,
  d: number,
): (ray: number) => readonly [number, number] {
  const none: Vec3 = [0, 0, 0];
  const { frame, right, top, spacingM } = latticeFor({ low: none, high: none }, direction, wave);
  const [left, low, columns] = [0, 1, 2].map((k) => wave.window[4 * d + k] as number) as [
    number,
    number,
    number,
  ];
  const [r, t, a] = [frame.right, frame.top, frame.ahead];
  return (ray) => {
    const row = Math.floor(ray / columns);
    const across = right + (left + ray - row * columns) * spacingM;
    const up = top + (low + row) * spacingM;
    const ahead = -(across * r[1] + up * t[1]) / a[1];
    return [across * r[0] + up * t[0] + ahead * a[0], across * r[2] + up * t[2] + ahead * a[2]];
  };
}

/** A direction to the ground that was traced as one counts once for the open ground beyond the zones and once for every zone. */
export function landingOf({ wave, traced, zones, faces, firstPatch }: LandingInput): Landing {
  const { runRay, runStart } = wave;
  const runZone = new Uint8Array(runRay.length);
  const directions: Direction[] = [];
  const of: number[] = [];
  const zone: number[] = [];
  const add = (direction: Direction, d: number, its: number): void => {
    directions.push(direction);
    of.push(d);
    zone.push(its);
  };
  wave.directions.forEach((direction, d) => {
    add(direction, d, 0);
    if (direction.kind !== 'ground' || direction.thrownBy !== undefined) return;
    const placeOf = placesOf(wave, traced[d] as Direction, d);
    const isMet = new Uint8Array(zoneCount(zones) + 1);
    for (let run = runStart[d] as number; run < (runStart[d + 1] as number); run++) {
      const [x, z] = placeOf(runRay[run] as number);
      const its = zoneAt(zones, x, z) + 1;
      runZone[run] = its;
      isMet[its] = 1;
    }
    for (let its = 1; its < isMet.length; its++) {
      if (isMet[its] === 1) add({ ...direction, onGround: { patch: firstPatch + its - 1, faces } }, d, its);
    }
  });
  const traceds = Int32Array.from(of);
  return { directions, traced: traceds, zone: Uint8Array.from(zone), zones: zoneCount(zones), runZone };
}
