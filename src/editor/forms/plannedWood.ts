/** A tree before it has thickness: wood that knows its course, what it carries and where. */
import { type Bend, crookedPath, tenthMm } from '../../geometry/crookedPath.ts';
import type { Path } from '../../geometry/path.ts';
import type { AxisKind } from '../../geometry/tree.ts';
import { scale, type Vec3 } from '../../geometry/vec.ts';
import { wind } from '../../geometry/world.ts';
import { divergenceDeg } from '../spiral.ts';

/** A shoot, or the bud it would come from. */
export interface PlannedShoot {
  /** Of the length of its wood. */
  readonly share: number;
  readonly aroundDeg: number;
  /** 0 goes on along the wood, 1 leaves it at 45 degrees. */
  readonly lean: number;
  /** Of the usual length: the outer ones are the stronger. */
  readonly strength: number;
  /** The course it is tied to; left out: it grows as it likes. */
  readonly tied?: Pick<Bend, 'bearingDeg' | 'uprightDeg' | 'tipUprightDeg'>;
}

export interface PlannedWood {
  readonly id: string;
  readonly name: string;
  readonly kind: AxisKind;
  /** Share of its parent's length at which it leaves it. */
  readonly share: number;
  /** Seasons since it grew: 1 is last year's wood. */
  readonly ageYears: number;
  /** Another course on each attempt, to be chosen among for the room there is. */
  readonly course: (attempt: number) => Path;
  readonly carries: readonly PlannedWood[];
  readonly shoots: readonly PlannedShoot[];
}

/** `count` things over `places`, as evenly as whole numbers allow. */
export const sharedOut = (count: number, places: number): number[] =>
  Array.from(
    { length: places },
    (_, i) => Math.floor(((i + 1) * count) / places) - Math.floor((i * count) / places),
  );

/** Shoots from a share of the wood's length to its tip, in a spiral; the last goes on from the tip. */
export function spiralShoots(count: number, from: number, firstDeg: number): PlannedShoot[] {
  return Array.from({ length: count }, (_, i) => {
    const rank = count === 1 ? 1 : i / (count - 1);
    const isLast = i === count - 1;
    return {
      share: from + (1 - from) * rank,
      aroundDeg: (firstDeg + i * divergenceDeg) % 360,
      lean: isLast ? 0.3 : 1.1,
      strength: 0.75 + 0.5 * rank,
    };
  });
}

const tidy = (path: Path): Vec3[] => path.map(([x, y, z]): Vec3 => [tenthMm(x), tenthMm(y), tenthMm(z)]);

/** A crooked course whose tip lies `reachM` from its base, seen from above. */
export function reaching(
  bend: Omit<Bend, 'lengthM'>,
  reachM: number,
  seed: number,
  ...words: number[]
): Path {
  const path = crookedPath({ ...bend, lengthM: 10 }, seed, ...words);
  const [x, , z] = path[path.length - 1] as Vec3;
  return tidy(path.map((point) => scale(point, reachM / Math.hypot(x, z))));
}

/** A crooked course whose tip lies `heightM` above its base. */
export function rising(bend: Omit<Bend, 'lengthM'>, heightM: number, seed: number, ...words: number[]): Path {
  const path = crookedPath({ ...bend, lengthM: 10 }, seed, ...words);
  const [, y] = path[path.length - 1] as Vec3;
  return tidy(path.map((point) => scale(point, heightM / y)));
}

/** "East limb"; "East limb 2" where that is taken. */
export function limbNames(bearingsDeg: readonly number[], word: string): string[] {
  const names = bearingsDeg.map((bearing) => {
    const side = wind(bearing);
    return `${side.charAt(0).toUpperCase()}${side.slice(1)} ${word}`;
  });
  return names.map((name, i) => {
    const before = names.slice(0, i).filter((other) => other === name).length;
    return before === 0 ? name : `${name} ${before + 1}`;
  });
}
