/** Where the figures of a branch stand in the picture: near its tip, clear of the wood and of the fingers that pull it. */
import { awayFrom, type Room } from './handleLayout.ts';

type Xy = readonly [x: number, y: number];

export interface LabelSize {
  readonly width: number;
  readonly height: number;
}

/** From what is to stay in sight: past a handle and the finger on it, pixels. Our choice. */
const clearPx = 30;
const edgePx = 8;
/** The branch is taken for a straight line of so many points. */
const samples = 12;

/** Places are tried so far apart, pixels. */
const stepPx = 24;

/**
 * The upper left corner: of the places that hide nothing that nearest to the tip, else that which hides least.
 * @param holds where fingers take hold
 * @param tools what lies over the picture
 */
export function labelPlace(
  base: Xy,
  tip: Xy,
  { width, height }: LabelSize,
  room: Room,
  holds: readonly Xy[],
  tools: readonly Room[],
): Xy {
  const kept = Array.from({ length: samples + 1 }, (_, i): Xy => {
    const t = i / samples;
    return [base[0] + (tip[0] - base[0]) * t, base[1] + (tip[1] - base[1]) * t];
  }).concat(holds);
  let best: { readonly place: Xy; readonly cost: number } | null = null;
  for (const left of steps(room.left + edgePx, room.right - width - edgePx)) {
    for (const top of steps(room.top, room.bottom - height - edgePx)) {
      const box = { left, top, right: left + width, bottom: top + height };
      const clear = Math.min(clearPx, ...kept.map((point) => awayFrom(box, point)));
      const covered = tools.filter((tool) => overlaps(box, tool)).length;
      // What is hidden counts for more than any distance, and a hidden tool for most.
      const cost = awayFrom(box, tip) + 100 * (clearPx - clear) + 5000 * covered;
      if (cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { place: [left, top], cost };
    }
  }
  return best?.place ?? [room.left, room.top];
}

/** From the first place to the last, both included; the first alone where there is no room for more. */
function steps(from: number, to: number): number[] {
  const count = Math.max(0, Math.ceil((to - from) / stepPx));
  return Array.from({ length: count + 1 }, (_, i) => Math.max(from, Math.min(to, from + i * stepPx)));
}

const overlaps = (a: Room, b: Room): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
