/** The step of a day's answer that is nearest to an hour of the sun's own time. */
import type { DayAnswer, DayStep } from '../../engine/look.ts';
import type { NodeLight } from '../../engine/reports.ts';

/** Index into `steps`; -1 when the sun does not rise. */
export function stepAt(steps: readonly DayStep[], solarHour: number): number {
  let nearest = -1;
  let awayH = Number.POSITIVE_INFINITY;
  steps.forEach((step, i) => {
    const away = Math.abs(step.solarHour - solarHour);
    if (away < awayH) [nearest, awayH] = [i, away];
  });
  return nearest;
}

export interface Moment {
  /** Part of each shoot's nodes in direct sun, by id. */
  readonly shoots: ReadonlyMap<string, number>;
  /** 1 in direct sun, 0 in shade. */
  readonly nodes: readonly NodeLight[];
}

/** What the sun falls on in one step; nothing in a night. */
export function momentOf({ report, nodes }: DayAnswer, step: number): Moment {
  return {
    shoots: new Map(report.shoots.map(({ id, sunlit }) => [id, sunlit[step] ?? 0])),
    nodes: nodes.map(({ shootId, node, sunlit }) => ({ shootId, node, share: sunlit[step] ?? 0 })),
  };
}
