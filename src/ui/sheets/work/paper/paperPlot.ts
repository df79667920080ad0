/** The tree on paper: its wood and the numbered cuts, seen from a side or from above, in units of the picture. */
import { dot, scale, type Vec3 } from '../../../../geometry/vec.ts';
import { direction } from '../../../../geometry/world.ts';
import type { Canopy } from '../../../../growth/canopy.ts';
import { layTags } from '../../../scene/tagLayout.ts';

/** Where the eye is: a bearing from the tree (clockwise from north), or above with north up. */
export type PaperView = number | 'above';

export interface PaperWood {
  readonly owner: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly width: number;
}

export interface PaperTag {
  readonly text: string;
  /** On the wood. */
  readonly x: number;
  readonly y: number;
  /** Middle of the tag. */
  readonly tagX: number;
  readonly tagY: number;
}

export interface PaperPicture {
  readonly wood: readonly PaperWood[];
  readonly tags: readonly PaperTag[];
  /** Units of the picture for a metre. */
  readonly perM: number;
  readonly groundY: number | null;
  /** Corners of the pot as it is seen from the side, as SVG takes them; null from above and without a pot. */
  readonly pot: string | null;
}

/** The tree stands in its middle. */
export interface PaperPot {
  readonly topDiameterM: number;
  readonly baseDiameterM: number;
  readonly heightM: number;
}

export interface PaperFrame {
  readonly width: number;
  readonly height: number;
  /** Kept free on all sides for tags. */
  readonly margin: number;
}

export const tagSize = { width: 15, height: 11 } as const;

const across = (view: PaperView): readonly [right: Vec3, up: Vec3] =>
  view === 'above'
    ? [
        [1, 0, 0],
        [0, 0, -1],
      ]
    : [direction(view - 90, 0), [0, 1, 0]];

/** All wood, as large as the frame lets it be; the thinnest still seen in print. */
export function paperPicture(
  canopy: Pick<Canopy, 'wood'>,
  marks: readonly { readonly text: string; readonly point: Vec3 }[],
  view: PaperView,
  { width, height, margin }: PaperFrame,
  pot: PaperPot | null = null,
): PaperPicture {
  const [right, up] = across(view);
  const flat = (point: Vec3): readonly [number, number] => [dot(point, right), 0 - dot(point, up)];
  const points = canopy.wood.flatMap(({ from, to }) => [flat(from), flat(to)]);
  const ground = view === 'above' ? [] : [0];
  const xs = points.map(([x]) => x);
  const ys = [...points.map(([, y]) => y), ...ground];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [spanX, spanY] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const room = { x: width - 2 * margin, y: height - 2 * margin };
  const perM = Math.min(room.x / Math.max(1e-6, spanX), room.y / Math.max(1e-6, spanY));
  const aside = margin + (room.x - perM * spanX) / 2;
  const at = (point: Vec3): readonly [number, number] => {
    const [x, y] = flat(point);
    return [aside + (x - left) * perM, margin + (y - top) * perM];
  };
  return {
    wood: canopy.wood.map(({ owner, from, to, fromRadiusM, toRadiusM }) => {
      const [[x1, y1], [x2, y2]] = [at(from), at(to)];
      return { owner, x1, y1, x2, y2, width: Math.max(0.7, (fromRadiusM + toRadiusM) * perM) };
    }),
    tags: tagsAt(
      marks.map(({ text, point }) => ({ text, at: at(point) })),
      width,
    ),
    perM,
    pot: view === 'above' || pot === null ? null : potCorners(pot, right, at),
    groundY: view === 'above' ? null : margin + (0 - top) * perM,
  };
}

function potCorners(
  { topDiameterM, baseDiameterM, heightM }: PaperPot,
  right: Vec3,
  at: (point: Vec3) => readonly [number, number],
): string {
  const corner = (side: number, diameterM: number, upM: number): string => {
    const [x, , z] = scale(right, (side * diameterM) / 2);
    return at([x, upM, z]).join(',');
  };
  return [
    corner(-1, topDiameterM, heightM),
    corner(1, topDiameterM, heightM),
    corner(1, baseDiameterM, 0),
    corner(-1, baseDiameterM, 0),
  ].join(' ');
}

function tagsAt(
  marks: readonly { readonly text: string; readonly at: readonly [number, number] }[],
  width: number,
): readonly PaperTag[] {
  const tags = marks.map(({ at: [x, y] }) => {
    return { x, y: y - 2, widthPx: tagSize.width + 2, heightPx: tagSize.height + 2, rank: 0 };
  });
  return layTags(tags, { top: 0, width }).map(([aside, down], i) => {
    const { text, at } = marks[i] as (typeof marks)[number];
    return {
      text,
      x: at[0],
      y: at[1],
      tagX: at[0] + aside,
      tagY: at[1] + down - 2 - (tagSize.height + 2) / 2,
    };
  });
}
