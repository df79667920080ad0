/** Where the tags of the cuts are set in the picture, so that none hides another. */

/** A tag's place in the picture: the tip of its tail lies at x, y (pixels, y down), its body above it. */
export interface Tag {
  readonly x: number;
  readonly y: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** The highest is set first and stays nearest to its place. */
  readonly rank: number;
}

export type Shift = readonly [right: number, down: number];

/** Tags may overlap by so many pixels: their corners are empty. */
const slackPx = 2;
/** Steps up and to each side, in sizes of the tag, that are tried. */
const [mostUp, mostAside] = [5, 5];

/** Steps aside and up, the nearest first; to the side alone rather than across others, never down over the tail. */
const steps: readonly (readonly [aside: number, up: number])[] = Array.from(
  { length: (2 * mostAside + 1) * (mostUp + 1) },
  (_, i) => [(i % (2 * mostAside + 1)) - mostAside, Math.floor(i / (2 * mostAside + 1))] as const,
).sort((a, b) => Math.hypot(...a) - Math.hypot(...b));

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const boxOf = ({ x, y, widthPx, heightPx }: Tag, [right, down]: Shift): Box => ({
  left: x + right - widthPx / 2,
  right: x + right + widthPx / 2,
  top: y + down - heightPx,
  bottom: y + down,
});

/** Area that two boxes share, beyond the slack, square pixels. */
function shared(a: Box, b: Box): number {
  const across = Math.min(a.right, b.right) - Math.max(a.left, b.left) - slackPx;
  const upright = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) - slackPx;
  return across > 0 && upright > 0 ? across * upright : 0;
}

/** The part of the picture that is free for tags, pixels. */
export interface Room {
  readonly top: number;
  readonly width: number;
}

/** Area of a box outside the room, square pixels. */
function outside({ left, right, top, bottom }: Box, room: Room): number {
  const across = Math.max(0, Math.min(right, room.width) - Math.max(left, 0));
  const upright = Math.max(0, bottom - Math.max(top, room.top));
  return (right - left) * (bottom - top) - across * upright;
}

/** How far each tag is moved from its place, in their order. Where there is no room at all a tag goes where it hides least. */
export function layTags(tags: readonly Tag[], room: Room): readonly Shift[] {
  const shifts: Shift[] = tags.map(() => [0, 0]);
  const placed: Box[] = [];
  const order = tags.map((tag, i) => ({ tag, i })).sort((a, b) => b.tag.rank - a.tag.rank);
  for (const { tag, i } of order) {
    let best: { shift: Shift; box: Box; hidden: number } | null = null;
    for (const [aside, up] of steps) {
      const shift: Shift = [aside * tag.widthPx, 0 - up * tag.heightPx];
      const box = boxOf(tag, shift);
      const hidden = placed.reduce((sum, other) => sum + shared(box, other), outside(box, room));
      if (best === null || hidden < best.hidden) best = { shift, box, hidden };
      if (hidden === 0) break;
    }
    if (best === null) continue;
    shifts[i] = best.shift;
    placed.push(best.box);
  }
  return shifts;
}
