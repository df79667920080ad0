import type { SunPoint } from './stageModel.ts';

/** Stretches of the way above the horizon, in order. */
export function aboveHorizon(path: readonly SunPoint[]): SunPoint[][] {
  const runs: SunPoint[][] = [];
  let run: SunPoint[] = [];
  for (const point of path) {
    if (point.altitudeDeg >= 0) run.push(point);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  if (run.length > 0) runs.push(run);
  return runs;
}
