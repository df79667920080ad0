/** What a stroke goes over in the picture. */
import type { Canopy } from '../../growth/canopy.ts';
import { type Pixel, type Project, pick, type Rod } from './pick.ts';

type Xy = readonly [x: number, y: number];

/** From one look to the next along a stroke, pixels: less than any wood that can be pointed at. Our choice. */
const stepPx = 4;

/** All wood of branches that stand in the file; growth of this summer's buds is none. */
export function branchWood(canopy: Canopy): Rod[] {
  return canopy.wood.flatMap(({ owner, from, to, fromRadiusM, toRadiusM }) => {
    const of = canopy.owners[owner];
    if (of?.kind !== 'axis') return [];
    return [{ id: of.id, shape: 'wood', from, to, radiusM: Math.max(fromRadiusM, toRadiusM) }];
  });
}

export interface Sweep {
  /** Ids of the branches met from one place of the hand to the next, both ends included: at each place the nearest. */
  from(one: Xy, to: Xy): ReadonlySet<string>;
}

/**
 * For one stroke, in which the eye stands still.
 * @param reachPx how near to thin wood counts as on it
 */
export function sweepOver(
  rods: readonly Rod[],
  project: Project,
  pxPerM: (depthM: number) => number,
  reachPx: number,
): Sweep {
  const seen = new Map<unknown, Pixel | null>();
  const once: Project = (point) => {
    const known = seen.get(point);
    if (known !== undefined) return known;
    const pixel = project(point);
    seen.set(point, pixel);
    return pixel;
  };
  return {
    from(one, to) {
      const met = new Set<string>();
      const steps = Math.max(1, Math.ceil(Math.hypot(to[0] - one[0], to[1] - one[1]) / stepPx));
      for (let i = 0; i <= steps; i++) {
        const [x, y] = [one[0] + ((to[0] - one[0]) * i) / steps, one[1] + ((to[1] - one[1]) * i) / steps];
        const target = pick(rods, once, x, y, { reachPx, pxPerM });
        if (target !== null) met.add(target.id);
      }
      return met;
    },
  };
}
