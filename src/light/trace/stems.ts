/** Stems seen along a beam: the ball hull projects exactly to the hull of two discs. */
import type { Stem, Surface } from '../../geometry/surface.ts';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import type { Crossing } from '../tracer.ts';
import { meetsStem } from './meet.ts';
import {
  type BeamFrame,
  type Cover,
  firstColumn,
  firstRow,
  lastColumn,
  lastRow,
  type ReceiverGrid,
} from './receiverGrid.ts';

/**
 * Share of the squared length under which a stem counts as seen end-on: one disc (nearly) hides the other, and the
 * quadratic below loses its digits.
 */
const endOn = 1e-6;

interface NumberedStem {
  readonly stem: Stem;
  readonly surface: number;
}

export function stemsOf(surfaces: readonly Surface[]): readonly NumberedStem[] {
  const stems: NumberedStem[] = [];
  surfaces.forEach((stem, surface) => {
    if (stem.shape === 'stem') stems.push({ stem, surface });
  });
  return stems;
}

export function prepareStems(surfaces: readonly Surface[]): Cover {
  const stems = stemsOf(surfaces);
  return (frame, grid, reached, crossing) => {
    for (const { stem, surface } of stems) {
      if (reached?.[surface] !== 0) cover(stem, surface, frame, grid, crossing);
    }
  };
}

/**
 * A stem as seen along the beam. At the share s along it the ball has its centre at c(s) and the radius r(s), all affine in
 * s. Seen from the place P on the plane its far side lies ahead by c_ahead(s) + sqrt(q(s)), where q(s) = r(s)^2 -
 * |P - c(s)|^2 = c + 2 b s - a s^2. That is concave in s; its top is at
 * s = b/a + tilt sqrt(c + b^2/a), tilt = dAhead / sqrt(a (a + dAhead^2)). Brought into 0 to 1, that s has q > 0 exactly when
 * P is covered at all, and gives the end of the shade.
 */
interface SeenStem {
  readonly right: number;
  readonly top: number;
  readonly ahead: number;
  readonly dRight: number;
  readonly dTop: number;
  readonly dAhead: number;
  readonly radius: number;
  readonly dRadius: number;
  readonly a: number;
  readonly tilt: number;
}

function see({ from, to, fromRadiusM, toRadiusM }: Stem, frame: BeamFrame): SeenStem {
  const [right, top, ahead] = [dot(from, frame.right), dot(from, frame.top), dot(from, frame.ahead)];
  const dRight = dot(to, frame.right) - right;
  const dTop = dot(to, frame.top) - top;
  const dAhead = dot(to, frame.ahead) - ahead;
  const dRadius = toRadiusM - fromRadiusM;
  const a = dRight * dRight + dTop * dTop - dRadius * dRadius;
  const tilt = dAhead / Math.sqrt(a * (a + dAhead * dAhead));
  return { right, top, ahead, dRight, dTop, dAhead, radius: fromRadiusM, dRadius, a, tilt };
}

const isEndOn = ({ dRight, dTop, dAhead, a }: SeenStem): boolean =>
  a <= endOn * (dRight * dRight + dTop * dTop + dAhead * dAhead);

/** Whether a receiver at a place on the plane is in the shade of a stem that is not seen end-on. */
function isShaded(seen: SeenStem, placeRight: number, placeTop: number, placeAhead: number): boolean {
  const right = placeRight - seen.right;
  const top = placeTop - seen.top;
  const b = right * seen.dRight + top * seen.dTop + seen.radius * seen.dRadius;
  const c = seen.radius * seen.radius - right * right - top * top;
  const squared = c + (b * b) / seen.a;
  if (!(squared > 0)) return false;
  const s = Math.min(1, Math.max(0, b / seen.a + seen.tilt * Math.sqrt(squared)));
  const q = c + s * (2 * b - seen.a * s);
  return q > 0 && seen.ahead + s * seen.dAhead + Math.sqrt(q) > placeAhead;
}

/** Whether the receiver at an entry of the grid is in the shade of a stem that may be seen end-on. */
export function isShadedEndOn(stem: Stem, grid: ReceiverGrid, k: number, frame: BeamFrame): boolean {
  const { right, top, ahead } = frame;
  const [r, t, a] = [grid.right[k] as number, grid.top[k] as number, grid.ahead[k] as number];
  const at = (axis: 0 | 1 | 2): number => r * right[axis] + t * top[axis] + a * ahead[axis];
  const point: Vec3 = [at(0), at(1), at(2)];
  return meetsStem(stem, point, ahead);
}

/** Tests the receivers in the cells round the stem. */
function cover(stem: Stem, surface: number, frame: BeamFrame, grid: ReceiverGrid, crossing: Crossing): void {
  const seen = see(stem, frame);
  const [toRight, toTop] = [seen.right + seen.dRight, seen.top + seen.dTop];
  const { fromRadiusM: r0, toRadiusM: r1 } = stem;
  const left = firstColumn(grid, Math.min(seen.right - r0, toRight - r1));
  const right = lastColumn(grid, Math.max(seen.right + r0, toRight + r1));
  if (right < left) return;
  const low = firstRow(grid, Math.min(seen.top - r0, toTop - r1));
  const high = lastRow(grid, Math.max(seen.top + r0, toTop + r1));
  const farthest = Math.max(seen.ahead + r0, seen.ahead + seen.dAhead + r1);
  const plain = isEndOn(seen);
  for (let row = low; row <= high; row++) {
    const end = grid.start[row * grid.columns + right + 1] as number;
    for (let k = grid.start[row * grid.columns + left] as number; k < end; k++) {
      const r = grid.right[k] as number;
      const t = grid.top[k] as number;
      const a = grid.ahead[k] as number;
      if (a >= farthest || grid.onSurface[k] === surface) continue;
      const met = plain ? isShadedEndOn(stem, grid, k, frame) : isShaded(seen, r, t, a);
      if (met) crossing(grid.receiver[k] as number, surface, stem.optics.transmittance);
    }
  }
}
