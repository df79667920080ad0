/** What a press may have meant besides what lies right under it: a finger covers more than a point. */
import type { PointerKind } from './draw/gesture.ts';
import type { Target } from './pick.ts';

export interface Picked {
  /** Right under the press, or nearest within reach. */
  readonly target: Target | null;
  /** Ids of branches and buds that it may have meant, the likeliest first; empty where there is no doubt. */
  readonly among: readonly string[];
}

type PickAt = (x: number, y: number) => Target | null;

/**
 * How far a press lands from what was meant, pixels: rings of places that are looked at too. A finger scatters by 6 pixels in each
 * direction, so that one press in 250 lands more than 20 off (Rayleigh); of a mouse only near misses beside thin wood count. Our choice.
 */
const rings = {
  touch: [4, 8, 12, 16, 20].map((radiusPx) => ({ radiusPx, places: 2 * radiusPx })),
  mouse: [{ radiusPx: 3, places: 8 }],
  pen: [{ radiusPx: 3, places: 8 }],
};
/** More are no choice but a search. Our choice. */
const mostAmong = 10;
/** What is less likely than this is not offered. Our choice. */
const leastShare = 0.004;
/** Nothing farther off is looked at, pixels. */
export const spreadPx = 20;
/** For a finger: how much less likely a place is than the middle, at its ring. */
const scatterPx = 6;

export function pickNear(pickAt: PickAt, x: number, y: number, kind: PointerKind): Picked {
  const target = pickAt(x, y);
  if (kind !== 'touch' && (target === null || target.shape === 'face')) return { target, among: [] };
  const weights = new Map<string, number>();
  const count = (found: Target | null, weight: number): void => {
    if (found !== null) weights.set(found.id, (weights.get(found.id) ?? 0) + weight);
  };
  count(target, 1);
  for (const { radiusPx, places } of rings[kind]) {
    const weight = Math.exp(-((radiusPx / scatterPx) ** 2) / 2);
    for (let k = 0; k < places; k++) {
      const turn = (2 * Math.PI * k) / places;
      count(pickAt(x + radiusPx * Math.cos(turn), y + radiusPx * Math.sin(turn)), weight);
    }
  }
  const sum = [...weights.values()].reduce((a, b) => a + b, 0);
  const likely = [...weights]
    .filter(([, weight]) => weight >= leastShare * sum)
    .sort(([, a], [, b]) => b - a)
    .map(([id]) => id);
  const first = target === null ? likely : [target.id, ...likely.filter((id) => id !== target.id)];
  const isPlain = first.length === 0 || (first.length === 1 && target !== null);
  return { target, among: isPlain ? [] : first.slice(0, mostAmong) };
}
