/** A row of the strip of a day: how much of something is in the sun, step by step, as few shapes as will do. */

/** Strengths of colour that can be told apart: shade, a third, two thirds, full sun. */
const levels = 3;

export interface Run {
  /** Steps: `from` included, `to` not. */
  readonly from: number;
  readonly to: number;
  /** 1 to 3 thirds; stretches in shade are left out. */
  readonly level: 1 | 2 | 3;
}

const levelOf = (share: number): number =>
  share <= 0 ? 0 : Math.max(1, Math.round(Math.min(1, share) * levels));

/** @param sunlit share in direct sun, 0 to 1, one a step */
export function stripRuns(sunlit: ArrayLike<number>): readonly Run[] {
  const runs: Run[] = [];
  let from = 0;
  for (let i = 1; i <= sunlit.length; i++) {
    const level = levelOf(sunlit[from] ?? 0);
    if (i < sunlit.length && levelOf(sunlit[i] ?? 0) === level) continue;
    if (level > 0) runs.push({ from, to: i, level: level as Run['level'] });
    from = i;
  }
  return runs;
}

/** The shape of all runs of one level, in a box as wide as there are steps and one high. */
export const runsPath = (runs: readonly Run[], level: Run['level']): string =>
  runs
    .filter((run) => run.level === level)
    .map(({ from, to }) => `M${from} 0H${to}V1H${from}Z`)
    .join('');

/** The step at a place across the strip, 0 left to 1 right. */
export const stepAcross = (place: number, steps: number): number =>
  Math.min(steps - 1, Math.max(0, Math.floor(place * steps)));
