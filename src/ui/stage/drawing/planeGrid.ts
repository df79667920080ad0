/** The lines that show the plane of a stroke. */
import type { Xy } from '../../../editor/drawing/look.ts';
import type { WorkPlane } from '../../../editor/drawing/workPlane.ts';
import { spanOf } from '../../../editor/pull/inPlane.ts';
import { add, scale, type Vec3 } from '../../../geometry/vec.ts';
import type { StageEye } from '../../scene/stageModel.ts';

/** Lines lie no nearer to each other than this, pixels. Our choice. */
const nearestPx = 26;
/** Steps from line to line: round figures of each system of units, metres. */
const stepsM = {
  metric: [0.05, 0.1, 0.25, 0.5, 1, 2.5],
  us: [0.0508, 0.1524, 0.3048, 0.6096, 1.524, 3.048],
} as const;
const linesEachWay = 12;

export interface PlaneGrid {
  readonly lines: readonly (readonly [from: Xy, to: Xy])[];
  readonly stepM: number;
}

/** Null where the plane is not seen. */
export function planeGrid(plane: WorkPlane, eye: StageEye, units: 'metric' | 'us'): PlaneGrid | null {
  const middle = eye.project(plane.through);
  if (middle === null) return null;
  const pxPerM = eye.pxPerM(middle[2]);
  const steps: readonly number[] = stepsM[units];
  const stepM = steps.find((step) => step * pxPerM >= nearestPx) ?? steps.at(-1) ?? 1;
  const [right, upward] = spanOf(plane.facing);
  const at = (a: number, b: number): Xy | null => {
    const point: Vec3 = add(plane.through, add(scale(right, a * stepM), scale(upward, b * stepM)));
    const pixel = eye.project(point);
    return pixel === null ? null : [pixel[0], pixel[1]];
  };
  const lines: [Xy, Xy][] = [];
  const n = linesEachWay;
  for (let k = -n; k <= n; k++) {
    for (const [from, to] of [
      [at(k, -n), at(k, n)],
      [at(-n, k), at(n, k)],
    ] as const) {
      if (from !== null && to !== null) lines.push([from, to]);
    }
  }
  return { lines, stepM };
}
