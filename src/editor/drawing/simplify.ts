/**
 * A line of many points told by few. Method: Douglas and Peucker 1973, Algorithms for the reduction of the number of points required to
 * represent a digitized line, The Canadian Cartographer 10, pp. 112-122 (from memory).
 */

type Point = readonly number[];

/** Distance of a point from the stretch between two others, in any number of dimensions. */
export function fromStretch(point: Point, from: Point, to: Point): number {
  let [square, along] = [0, 0];
  for (let k = 0; k < point.length; k++) {
    const step = (to[k] as number) - (from[k] as number);
    square += step * step;
    along += step * ((point[k] as number) - (from[k] as number));
  }
  const t = square > 0 ? Math.min(1, Math.max(0, along / square)) : 0;
  let away = 0;
  for (let k = 0; k < point.length; k++) {
    const here = (from[k] as number) + t * ((to[k] as number) - (from[k] as number));
    away += ((point[k] as number) - here) ** 2;
  }
  return Math.sqrt(away);
}

/** Indices of the points that are kept, the first and the last among them: no point left out lies farther from the line than `tolerance`. */
export function simplified(points: readonly Point[], tolerance: number): readonly number[] {
  const keeps = new Set([0, points.length - 1]);
  const waiting: [number, number][] = [[0, points.length - 1]];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const [first, last] = next;
    let [farthest, most] = [-1, tolerance];
    for (let i = first + 1; i < last; i++) {
      const away = fromStretch(points[i] as Point, points[first] as Point, points[last] as Point);
      if (away > most) [farthest, most] = [i, away];
    }
    if (farthest < 0) continue;
    keeps.add(farthest);
    waiting.push([first, farthest], [farthest, last]);
  }
  return [...keeps].sort((a, b) => a - b);
}

/** The same, the tolerance made larger by a half until no more than `most` points are left. */
export function simplifiedTo(points: readonly Point[], tolerance: number, most: number): readonly number[] {
  let [kept, now] = [simplified(points, tolerance), tolerance];
  while (kept.length > most) {
    now *= 1.5;
    kept = simplified(points, now);
  }
  return kept;
}
