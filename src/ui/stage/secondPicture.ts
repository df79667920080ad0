/** The wood alone, seen from another side than the stage sees it: lines of a small picture. */
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf } from '../../document/views.ts';
import { placeTree } from '../../geometry/tree.ts';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import { bearingDeg, wind } from '../../geometry/world.ts';
import { type FlatSide, flatSides, pictureAxes, viewDirection } from '../scene/framing.ts';
import type { StageEye } from '../scene/stageModel.ts';

export interface Line {
  readonly id: string;
  /** From base to tip, as an SVG path. */
  readonly d: string;
  readonly widthPx: number;
}

export interface SecondPicture {
  readonly lines: readonly Line[];
  /** What is left and right in it, or at its top when seen from above: first letters of the winds. */
  readonly letters: { readonly left: string; readonly right: string; readonly top: string };
}

/** The picture is square, of so many units. */
export const sizePx = 100;
/** Room at the edges, where the letters stand, and the thinnest line that is still seen. */
const edgePx = 12;
const thinnestPx = 0.9;

/** How the picture lies on the world: it stays while a branch is pulled. */
export interface SecondFrame {
  readonly side: FlatSide;
  readonly middle: readonly [across: number, up: number];
  readonly pxPerM: number;
}

const spanOf = (side: FlatSide): readonly [Vec3, Vec3] => {
  const { right, upward } = pictureAxes(viewDirection(side, 0));
  return [right, upward];
};

const pathsOf = (file: TreeFile) => [...placeTree({ axes: file.axes }, stanceOf(file)).values()];

/** As large as all wood of the tree allows. */
export function secondFrame(file: TreeFile, side: FlatSide): SecondFrame {
  const axes = spanOf(side);
  const points = pathsOf(file).flatMap(({ path }) => path);
  const spans = axes.map((axis) => {
    const along = points.map((point) => dot(point, axis));
    const [low, high] = along.reduce(
      ([least, most], at) => [Math.min(least, at), Math.max(most, at)] as const,
      [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY] as readonly [number, number],
    );
    return { middle: (low + high) / 2, wideM: high - low };
  });
  const [across, up] = spans as [(typeof spans)[0], (typeof spans)[0]];
  const widestM = Math.max(across.wideM, up.wideM, 0.1);
  return { side, middle: [across.middle, up.middle], pxPerM: (sizePx - 2 * edgePx) / widestM };
}

export function secondPicture(file: TreeFile, { side, middle, pxPerM }: SecondFrame): SecondPicture {
  const [right, upward] = spanOf(side);
  const text = (point: Vec3): string => {
    const x = sizePx / 2 + (dot(point, right) - middle[0]) * pxPerM;
    const y = sizePx / 2 - (dot(point, upward) - middle[1]) * pxPerM;
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  };
  const lines = pathsOf(file).map(({ axis, path }) => ({
    id: axis.id,
    d: `M${path.map(text).join('L')}`,
    widthPx: Math.max(thinnestPx, ((axis.baseDiameterM + axis.tipDiameterM) / 2) * pxPerM),
  }));
  const initial = (bearing: number): string => wind(bearing).charAt(0).toUpperCase();
  const toRight = bearingDeg(right);
  const top = side === 'above' ? initial(toRight - 90) : '';
  return { lines, letters: { left: initial(toRight + 180), right: initial(toRight), top } };
}

export type Side = Exclude<FlatSide, 'above'>;

export const isSide = (side: StageEye['side']): side is Side =>
  side !== 'above' && flatSides.some((one) => one === side);

/**
 * The side that shows what the stage cannot: from above while it looks from a side; from the side it had while it looks from above; square to
 * it while it looks freely.
 */
export function secondSide({ side, facing }: Pick<StageEye, 'side' | 'facing'>, last: Side): FlatSide {
  if (isSide(side)) return 'above';
  if (side === 'above') return last;
  const { right } = pictureAxes(facing);
  const sides = flatSides.filter(isSide);
  return sides.reduce((best, one) =>
    dot(viewDirection(one, 0), right) > dot(viewDirection(best, 0), right) + 1e-9 ? one : best,
  );
}
