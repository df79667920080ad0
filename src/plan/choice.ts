/** From few shoots to all: what each number kept brings, and which of these sets is gentle, balanced or bold. */
import type { KeepProblem } from './search.ts';

/** Gentle takes as little, bold as much, as may be for nearly the same worth; balanced is worth most. */
export const boldnesses = ['gentle', 'balanced', 'bold'] as const;
export type Boldness = (typeof boldnesses)[number];

/** What stands of a canopy, on the rays of the search. */
export interface KeepFigures {
  readonly shoots: number;
  /** Main crop. */
  readonly ripeFigs: number;
  /** Mean over the shoots that stand of their share of open sky, on the days at full leaf. */
  readonly meanLight: number;
  /** Shoots below half of fruiting light. */
  readonly deepShade: number;
}

export interface ChoicePoint extends KeepFigures {
  /** Whether the hard limits (room on a limb, spacing, no bare branch, leaves of a year) hold as in the balanced set. */
  readonly withinLimits: boolean;
  /** Plans read at this point. */
  readonly reads: readonly Boldness[];
}

export interface ChoiceProblem extends KeepProblem {
  figures(): KeepFigures;
  /** What the limits broken cost in `value`. */
  penalty(): number;
}

export interface Choice {
  /** By number of shoots, fewest first. */
  readonly points: readonly ChoicePoint[];
  readonly kept: Readonly<Record<Boldness, Uint8Array>>;
}

/** Gentle and bold sets are worth at least so much of the best; our choice. */
const nearlyAll = 0.95;
/** Hard limits cost more than this, figs; shoots in leaf that lead may go within it. */
const hardFrom = 50;
/** Steps from one end to the other, about; more candidates go several at a time. */
const steps = 60;

interface Point {
  readonly kept: Uint8Array;
  readonly value: number;
  readonly penalty: number;
  readonly figures: KeepFigures;
}

/**
 * From the best set one shoot less and less, while the limits hold; and one more and more, up to all. Each step takes what costs
 * least, or brings most (greedy, so between the best set and the ends a better one of the same size may be missed).
 * @param best the set at which the problem stands
 */
export function* chooseSets(problem: ChoiceProblem, best: Uint8Array): Generator<void, Choice, void> {
  const at = new Position(problem, best.slice());
  const middle = at.point();
  const holds = ({ penalty }: Point): boolean => penalty < middle.penalty + hardFrom;
  const fewer: Point[] = [];
  while (at.step(1)) {
    const point = at.point();
    if (!holds(point)) break;
    fewer.unshift(point);
    yield;
  }
  at.become(best);
  const more: Point[] = [];
  while (at.step(0)) {
    more.push(at.point());
    yield;
  }
  at.become(best);
  const all = [...fewer, middle, ...more];
  const near = all.filter((point) => holds(point) && point.value >= nearlyAll * middle.value);
  const read = { gentle: near.at(-1) ?? middle, balanced: middle, bold: near[0] ?? middle };
  return {
    points: all.map((point) => ({
      ...point.figures,
      withinLimits: holds(point),
      reads: boldnesses.filter((name) => read[name] === point),
    })),
    kept: { gentle: read.gentle.kept, balanced: read.balanced.kept, bold: read.bold.kept },
  };
}

class Position {
  private readonly problem: ChoiceProblem;
  private readonly kept: Uint8Array;
  private readonly atATime: number;

  constructor(problem: ChoiceProblem, kept: Uint8Array) {
    this.problem = problem;
    this.kept = kept;
    this.atATime = Math.ceil(problem.count / steps);
  }

  point(): Point {
    const { problem, kept } = this;
    return {
      kept: kept.slice(),
      value: problem.value(),
      penalty: problem.penalty(),
      figures: problem.figures(),
    };
  }

  become(kept: Uint8Array): void {
    kept.forEach((stands, member) => {
      if (stands !== this.kept[member]) this.flip(member);
    });
  }

  /** Flips those in a state (1 kept, 0 gone) that are worth most flipped; false when none is left. */
  step(from: number): boolean {
    const worth: { readonly member: number; readonly value: number }[] = [];
    this.kept.forEach((state, member) => {
      if (state !== from) return;
      worth.push({ member, value: this.problem.valueIf(member, Number.NEGATIVE_INFINITY) });
    });
    worth.sort((a, b) => b.value - a.value);
    for (const { member } of worth.slice(0, this.atATime)) this.flip(member);
    return worth.length > 0;
  }

  private flip(member: number): void {
    this.problem.flip(member);
    this.kept[member] = 1 - (this.kept[member] as number);
  }
}
