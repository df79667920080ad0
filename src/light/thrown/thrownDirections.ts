/** The directions along which a tree looks at patches of walls. */
import { random01 } from '../../geometry/random.ts';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import type { Direction, FaceLight } from '../directions.ts';
import { groundPatches, skyPatches } from '../sky/cells.ts';
import { beamFrame } from '../trace/receiverGrid.ts';
import { cornersOf, type Patch } from './patches.ts';

/** A ball round all that light is asked for. */
export interface Ball {
  readonly middle: Vec3;
  readonly radiusM: number;
}

type Place = readonly [right: number, top: number];

function distanceToSide([x, y]: Place, [ax, ay]: Place, [bx, by]: Place): number {
  const [dx, dy] = [bx - ax, by - ay];
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / squared)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

/** Whether rays from the ball may meet the front of the patch: on the plane across the direction the ball reaches its outline or lies in it. */
function mayMeet(patch: Patch, { middle, radiusM }: Ball, toSky: Vec3): boolean {
  if (!(dot(patch.normal, toSky) < 0)) return false;
  const { right, top } = beamFrame(toSky);
  const place = (point: Vec3): Place => [dot(point, right), dot(point, top)];
  const outline = cornersOf(patch).map(place);
  const at = place(middle);
  const sides = outline.map((a, i) => [a, outline[(i + 1) % outline.length] as Place] as const);
  const turns = sides.map(([a, b]) =>
    Math.sign((b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0])),
  );
  const isInside = turns.every((turn) => turn === turns[0]);
  return isInside || sides.some(([a, b]) => distanceToSide(at, a, b) < radiusM);
}

/** What the random numbers are for; no other use of a wave's seed has this word. */
const choiceWord = 52;

export interface ThrownInput {
  readonly directions: readonly Direction[];
  readonly patches: readonly Patch[];
  readonly faces: FaceLight;
  readonly ball: Ball;
  readonly seed: number;
  readonly wave: number;
}

/**
 * For each direction of sky or ground along which rays may meet a patch, one that looks at a patch; of several, one by chance that counts
 * for all. Its cell, of the ground's kind, is none of the light's.
 */
export function thrownDirections(input: ThrownInput): readonly Direction[] {
  const { directions, patches, faces, ball, seed, wave } = input;
  return directions.flatMap(({ toSky, kind, cell }): Direction[] => {
    if (kind === 'beam') return [];
    const met = [...patches.keys()].filter((p) => mayMeet(patches[p] as Patch, ball, toSky));
    const [cellPatch, number] =
      kind === 'sky' ? [skyPatches[cell], cell] : [groundPatches[cell], skyPatches.length + cell];
    const patch = met[Math.floor(met.length * random01(seed, wave, choiceWord, number))];
    if (patch === undefined) return [];
    const solidAngleSr = met.length * (cellPatch?.solidAngleSr ?? Number.NaN);
    const { reflectance } = patches[patch] as Patch;
    return [
      {
        // A copy: the tracers know a direction by its vector.
        toSky: [toSky[0], toSky[1], toSky[2]],
        kind: 'ground',
        cell: groundPatches.length + number,
        thrownBy: { patch, reflectance, solidAngleSr, faces },
      },
    ];
  });
}
