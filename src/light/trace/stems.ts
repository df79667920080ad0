/** Stems seen along a beam: the ball hull projects exactly to the hull of two discs. */
import type { Stem, Surface } from '../../geometry/surface.ts';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import type { Crossing } from '../tracer.ts';
import { meetsStem } from './meet.ts';
import { type BeamFrame, firstCell, lastCell, type ReceiverGrid } from './receiverGrid.ts';

/**
 * Share of the squared length under which a stem counts as seen end-on: one disc (nearly) hides the other, and the
 * quadratic below loses its digits.
 */
const endOn = 1e-6;

export function prepareStems(
  surfaces: readonly Surface[],
): (frame: BeamFrame, grid: ReceiverGrid, crossing: Crossing) => void {
  const stems: { stem: Stem; surface: number }[] = [];
  surfaces.forEach((stem, surface) => {
    if (stem.shape === 'stem') stems.push({ stem, surface });
  });
  return (frame, grid, crossing) => {
    for (const { stem, surface } of stems) cover(stem, surface, frame, grid, crossing);
  };
}

/**
 * Tests the receivers in the cells round the stem. At the share s along it the ball has its centre at c(s), all affine in
 * s, and radius r(s). Seen from the place P on the plane its far side lies ahead by c_ahead(s) + sqrt(q(s)) with
 * q(s) = r(s)^2 - |P - c(s)|^2 = -a s^2 + 2 b s + c. That is a concave function of s; its top is at
 * s = b/a + (dA/sqrt(a (a + dA^2))) sqrt(c + b^2/a), where dA is the stem's run towards the light. Brought into 0 to 1, that s
 * has q >= 0 exactly when P is covered at all, and gives the end of the shade.
 */
function cover(stem: Stem, surface: number, frame: BeamFrame, grid: ReceiverGrid, crossing: Crossing): void {
  const { from, to, fromRadiusM: r0, toRadiusM: r1 } = stem;
  const [fromRight, toRight] = [dot(from, frame.right), dot(to, frame.right)];
  const firstColumn = firstCell(
    Math.min(fromRight - r0, toRight - r1),
    grid.minRight,
    grid.cellsPerM,
    grid.columns,
  );
  const lastColumn = lastCell(
    Math.max(fromRight + r0, toRight + r1),
    grid.minRight,
    grid.cellsPerM,
    grid.columns,
  );
  if (lastColumn < firstColumn) return;
  const [fromTop, toTop] = [dot(from, frame.top), dot(to, frame.top)];
  const firstRow = firstCell(Math.min(fromTop - r0, toTop - r1), grid.minTop, grid.cellsPerM, grid.rows);
  const lastRow = lastCell(Math.max(fromTop + r0, toTop + r1), grid.minTop, grid.cellsPerM, grid.rows);
  const [fromAhead, toAhead] = [dot(from, frame.ahead), dot(to, frame.ahead)];
  const [dR, dT, dA, dRadius] = [toRight - fromRight, toTop - fromTop, toAhead - fromAhead, r1 - r0];
  const a = dR * dR + dT * dT - dRadius * dRadius;
  const plain = a <= endOn * (dR * dR + dT * dT + dA * dA);
  const tilt = dA / Math.sqrt(a * (a + dA * dA));
  const farthest = Math.max(fromAhead + r0, toAhead + r1);
  const share = stem.optics.transmittance;
  for (let row = firstRow; row <= lastRow; row++) {
    const end = grid.start[row * grid.columns + lastColumn + 1] as number;
    for (let k = grid.start[row * grid.columns + firstColumn] as number; k < end; k++) {
      const ahead = grid.ahead[k] as number;
      if (ahead >= farthest || grid.onSurface[k] === surface) continue;
      const pRight = grid.right[k] as number;
      const pTop = grid.top[k] as number;
      if (plain) {
        if (meetsStem(stem, pointOf(frame, pRight, pTop, ahead), frame.ahead)) {
          crossing(grid.receiver[k] as number, surface, share);
        }
        continue;
      }
      const right = pRight - fromRight;
      const top = pTop - fromTop;
      const b = right * dR + top * dT + r0 * dRadius;
      const c = r0 * r0 - right * right - top * top;
      const reach = c + (b * b) / a;
      if (!(reach > 0)) continue;
      const s = Math.min(1, Math.max(0, b / a + tilt * Math.sqrt(reach)));
      const q = c + s * (2 * b - a * s);
      if (q > 0 && fromAhead + s * dA + Math.sqrt(q) > ahead)
        crossing(grid.receiver[k] as number, surface, share);
    }
  }
}

function pointOf({ right, top, ahead }: BeamFrame, r: number, t: number, a: number): Vec3 {
  const at = (k: 0 | 1 | 2): number => r * right[k] + t * top[k] + a * ahead[k];
  return [at(0), at(1), at(2)];
}
