/** Closest approach of paths. Method: Ericson 2005, Real-Time Collision Detection, section 5.1.9. */
import type { Path } from './path.ts';
import { distance, dot, lerp, sub, type Vec3 } from './vec.ts';

const clamp01 = (x: number): number => Math.min(1, Math.max(0, x));

export interface Approach {
  /** Shortest distance between the two centre lines, metres. */
  distanceM: number;
  /** Where it lies on the first and on the second: metres along the path, and the point. */
  alongFirstM: number;
  alongSecondM: number;
  onFirst: Vec3;
  onSecond: Vec3;
}

function closestOnSegments(p: Vec3, q: Vec3, r: Vec3, s: Vec3): { t: number; u: number } {
  const d1 = sub(q, p);
  const d2 = sub(s, r);
  const between = sub(p, r);
  const a = dot(d1, d1);
  const e = dot(d2, d2);
  const f = dot(d2, between);
  if (a === 0) return { t: 0, u: e === 0 ? 0 : clamp01(f / e) };
  const c = dot(d1, between);
  if (e === 0) return { t: clamp01(-c / a), u: 0 };
  const b = dot(d1, d2);
  const denominator = a * e - b * b;
  let t = denominator > 1e-12 * a * e ? clamp01((b * f - c * e) / denominator) : 0;
  let u = (b * t + f) / e;
  if (u < 0) {
    u = 0;
    t = clamp01(-c / a);
  } else if (u > 1) {
    u = 1;
    t = clamp01((b - c) / a);
  }
  return { t, u };
}

/** Where two paths come nearest to each other. */
export function closestApproach(first: Path, second: Path): Approach {
  let best: Approach | null = null;
  let alongFirst = 0;
  for (let i = 1; i < first.length; i++) {
    const [p, q] = [first[i - 1] as Vec3, first[i] as Vec3];
    let alongSecond = 0;
    for (let j = 1; j < second.length; j++) {
      const [r, s] = [second[j - 1] as Vec3, second[j] as Vec3];
      const { t, u } = closestOnSegments(p, q, r, s);
      const [onFirst, onSecond] = [lerp(p, q, t), lerp(r, s, u)];
      const distanceM = distance(onFirst, onSecond);
      if (best === null || distanceM < best.distanceM) {
        const alongFirstM = alongFirst + t * distance(p, q);
        const alongSecondM = alongSecond + u * distance(r, s);
        best = { distanceM, alongFirstM, alongSecondM, onFirst, onSecond };
      }
      alongSecond += distance(r, s);
    }
    alongFirst += distance(p, q);
  }
  if (best === null) throw new Error('closestApproach: each path needs two points or more');
  return best;
}
