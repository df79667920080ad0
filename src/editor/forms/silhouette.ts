/** The wood of a tree as seen from the side: strokes of a small picture. */
import type { TreeFile } from '../../document/treeFile.ts';
import { placeTree } from '../../geometry/tree.ts';
import { turnAboutUpright } from '../../geometry/world.ts';

export interface Stroke {
  /** Points from base to tip, as an SVG path: x to the right, y downwards, in the units of the picture. */
  readonly d: string;
  readonly width: number;
  readonly isShoot: boolean;
}

export interface Silhouette {
  readonly strokes: readonly Stroke[];
  /** The picture runs from 0 to `size` both ways; the soil is its lower edge. */
  readonly size: number;
}

const size = 100;
/** Room at the edges, and the thinnest stroke that is still seen. */
const edge = 4;
const thinnest = 1.6;

/** Seen square on to the bearing `acrossDeg`, which runs from left to right; as large as the picture allows. */
export function silhouette(axes: TreeFile['axes'], acrossDeg: number): Silhouette {
  const placed = [...placeTree({ axes }, { foot: [0, 0, 0], turnedDeg: 0 }).values()].map((one) => ({
    one,
    seen: one.path.map((point) => {
      const [x, y] = turnAboutUpright(point, 90 - acrossDeg);
      return [x, y] as const;
    }),
  }));
  const points = placed.flatMap(({ seen }) => seen);
  const wideM = 2 * Math.max(...points.map(([x]) => Math.abs(x)));
  const highM = Math.max(...points.map(([, y]) => y));
  const perM = (size - 2 * edge) / Math.max(wideM, highM);
  const text = (x: number, y: number): string =>
    `${(size / 2 + x * perM).toFixed(1)} ${(size - edge - y * perM).toFixed(1)}`;
  const strokes = placed.map(({ one, seen }) => ({
    d: `M${seen.map(([x, y]) => text(x, y)).join('L')}`,
    width: Math.max(thinnest, ((one.axis.baseDiameterM + one.axis.tipDiameterM) / 2) * perM),
    isShoot: one.axis.kind === 'shoot',
  }));
  return { strokes, size };
}
