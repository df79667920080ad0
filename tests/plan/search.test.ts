import { describe, expect, it } from 'vitest';
import { anneal } from '../../bench/anneal.ts';
import { random01 } from '../../src/geometry/random.ts';
import { counted, type KeepProblem, searchKeepSet } from '../../src/plan/search.ts';
import { walkKeepSets } from '../../src/plan/walkKeepSets.ts';
import { crowdedProblem, leafyProblem } from './crowded.ts';
import { drain } from './smallTree.ts';

/** Best of all sets, tried one by one; one member is flipped from one set to the next (Gray code). */
function bestOfAll(problem: KeepProblem): number {
  let best = problem.value();
  for (let n = 1; n < 2 ** problem.count; n++) {
    problem.flip(31 - Math.clz32(n & -n));
    best = Math.max(best, problem.value());
  }
  return best;
}

/** The same, passing over sets with more than so many of each row of so many members: limbs too full are worth less than any other. */
function bestWithin(most: number, aLimb: number, problem: KeepProblem): number {
  for (let member = 0; member < problem.count; member++) problem.flip(member);
  let best = Number.NEGATIVE_INFINITY;
  const walk = (member: number, onLimb: number): void => {
    if (member === problem.count) {
      best = Math.max(best, problem.value());
      return;
    }
    const next = (count: number): number => ((member + 1) % aLimb === 0 ? 0 : count);
    walk(member + 1, next(onLimb));
    if (onLimb === most) return;
    problem.flip(member);
    walk(member + 1, next(onLimb + 1));
    problem.flip(member);
  };
  walk(0, 0);
  return best;
}

/** Worth of members less the harm that pairs of them do to each other. */
function pairProblem(count: number, seed: number): KeepProblem {
  const kept = new Uint8Array(count).fill(1);
  const own = Array.from({ length: count }, (_, i) => random01(seed, i, 1));
  const harm = (i: number, j: number): number => 0.6 * random01(seed, i, j, 2) ** 3;
  const flip = (i: number): void => {
    kept[i] = 1 - (kept[i] as number);
  };
  const value = (): number => {
    let sum = 0;
    for (let i = 0; i < count; i++) {
      if (kept[i] !== 1) continue;
      sum += own[i] as number;
      for (let j = 0; j < i; j++) if (kept[j] === 1) sum -= harm(i, j);
    }
    return sum;
  };
  return { count, flip, value, valueIf: flipped({ flip, value }) };
}

/** Worth with one member flipped, by flipping it there and back. */
const flipped =
  ({ flip, value }: Pick<KeepProblem, 'flip' | 'value'>) =>
  (member: number): number => {
    flip(member);
    const then = value();
    flip(member);
    return then;
  };

describe('searchKeepSet', () => {
  it.each([11, 12, 13, 14, 15, 16])(
    'finds the best of all sets of 12 that harm each other, seed %i',
    (seed) => {
      const found = drain(searchKeepSet(pairProblem(12, seed)));
      expect(found.value).toBeCloseTo(bestOfAll(pairProblem(12, seed)), 9);
    },
  );

  it.each([
    [10, 21],
    [11, 22],
    [12, 23],
    [9, 24],
    [12, 24],
  ])('finds the best of all keep-sets of a crowded tree with %i buds, seed %i', (budCount, seed) => {
    const problem = crowdedProblem(budCount, seed);
    expect(problem.count).toBe(budCount);
    const found = drain(searchKeepSet(problem));
    expect(found.value).toBeCloseTo(bestOfAll(crowdedProblem(budCount, seed)), 6);
    expect(found.kept).toContain(1);
  });

  it.each([
    [51, { perLimb: 3, pinned: ['b-0-0', 'b-0-1', 'b-0-2', 'b-0-3'] }],
    [52, { perLimb: 3, pinned: ['b-1-0'], settled: ['b-1-3', 'b-2-0'] }],
    [53, { perLimb: 4, settled: ['b-2-0', 'b-2-1', 'b-0-3'] }],
    [54, { perLimb: 5, pinned: ['b-2-1', 'b-2-2'] }],
  ])('finds the best of all keep-sets with pins, settled cuts and limits, seed %i', (seed, given) => {
    const found = drain(searchKeepSet(crowdedProblem(12, seed, given)));
    expect(found.value).toBeCloseTo(bestOfAll(crowdedProblem(12, seed, given)), 6);
  });

  it.each([61, 62, 63])(
    'finds the best of all shoots in leaf within the share of leaves, seed %i',
    (seed) => {
      const found = drain(searchKeepSet(leafyProblem(11, seed)));
      expect(found.value).toBeCloseTo(bestOfAll(leafyProblem(11, seed)), 6);
      expect(found.kept.reduce((sum, kept) => sum + kept, 0)).toBeGreaterThanOrEqual(8);
    },
  );

  it.each([71, 72])(
    'finds the best of all keep-sets of a crowded tree with 18 buds, seed %i',
    (seed) => {
      const found = drain(searchKeepSet(crowdedProblem(18, seed)));
      expect(found.value).toBeCloseTo(bestWithin(3, 6, crowdedProblem(18, seed)), 6);
    },
    120_000,
  );

  it.each([81, 82])(
    'is not beaten by annealing ten times as long on 24 buds, seed %i',
    (seed) => {
      const problem = counted(crowdedProblem(24, seed, { perLimb: 8 }));
      const found = drain(searchKeepSet(problem));
      const rival = anneal(crowdedProblem(24, seed, { perLimb: 8 }), 10 * problem.evaluations(), seed);
      expect(rival).toBeLessThan(found.value + 1e-6);
    },
    120_000,
  );

  it('leaves the problem at the set it names', () => {
    const problem = pairProblem(10, 31);
    const found = drain(searchKeepSet(problem));
    expect(problem.value()).toBeCloseTo(found.value, 9);
  });

  it('only betters the set it is started from', () => {
    const start = [1, 0, 1, 0, 1, 0, 1, 0, 1];
    const problem = pairProblem(9, 32);
    start.forEach((kept, i) => {
      if (kept === 0) problem.flip(i);
    });
    const startValue = problem.value();
    expect(drain(searchKeepSet(pairProblem(9, 32), { from: start })).value).toBeGreaterThanOrEqual(
      startValue,
    );
  });

  it('answers for nothing to choose from', () => {
    expect(drain(searchKeepSet(pairProblem(0, 33)))).toEqual({ kept: new Uint8Array(0), value: 0 });
  });
});

describe('walkKeepSets', () => {
  it.each([91, 92])('finds a set worth as much as any and leaves the problem there, seed %i', (seed) => {
    const problem = pairProblem(11, seed);
    const found = drain(walkKeepSets(problem));
    expect(found.value).toBeCloseTo(bestOfAll(pairProblem(11, seed)), 9);
    expect(problem.value()).toBeCloseTo(found.value, 9);
    found.kept.forEach((stands, member) => {
      if (stands === 0) problem.flip(member);
    });
    expect(problem.value()).toBeCloseTo(pairProblem(11, seed).value(), 9);
  });

  it('answers for nothing to choose from', () => {
    expect(drain(walkKeepSets(pairProblem(0, 93)))).toEqual({ kept: new Uint8Array(0), value: 0 });
  });
});

describe('thinProblem', () => {
  it('knows the worth of a set with one shoot flipped without flipping it', () => {
    const problem = crowdedProblem(11, 43);
    for (const member of [2, 9, 4, 0, 7, 4]) {
      problem.flip(member);
      for (let other = 0; other < problem.count; other++) {
        const peeked = problem.valueIf(other, Number.NEGATIVE_INFINITY);
        expect(peeked).toBeCloseTo(flipped(problem)(other), 8);
        const bounded = problem.valueIf(other, 5);
        expect(bounded < 5 ? peeked < 5 : Math.abs(bounded - peeked) < 1e-8).toBe(true);
      }
    }
  });

  it('is worth the same after any flips and back', () => {
    const problem = crowdedProblem(9, 41);
    const value = problem.value();
    for (const member of [3, 7, 1, 3, 8, 7, 1, 8]) problem.flip(member);
    expect(problem.value()).toBeCloseTo(value, 9);
  });

  it('never leaves a limb bare and never keeps more on a limb than it holds', () => {
    const problem = crowdedProblem(12, 42);
    const { kept } = drain(searchKeepSet(problem));
    const onLimb = [0, 1, 2].map((l) => kept.slice(4 * l, 4 * l + 4).reduce((a, b) => a + b, 0));
    for (const count of onLimb) {
      expect(count).toBeGreaterThanOrEqual(1);
      expect(count).toBeLessThanOrEqual(3);
    }
  });
});

describe('a search among more members than are looked at one by one', () => {
  it('keeps one of each pair, the better one, and none that costs', () => {
    const count = 130;
    const brings = (i: number): number => (i % 5 === 4 ? -1 : 2 + ((7 * i) % 11) / 10);
    const kept = new Uint8Array(count).fill(1);
    const value = (): number => {
      let sum = 0;
      for (let i = 0; i < count; i++) if (kept[i] === 1) sum += brings(i);
      for (let i = 0; i + 1 < count; i += 2) if (kept[i] === 1 && kept[i + 1] === 1) sum -= 5;
      return sum;
    };
    const flip = (i: number): void => {
      kept[i] = 1 - (kept[i] as number);
    };
    const valueIf = (i: number): number => {
      flip(i);
      const then = value();
      flip(i);
      return then;
    };
    const steps = searchKeepSet({ count, value, valueIf, flip });
    let step = steps.next();
    while (!step.done) step = steps.next();
    for (let i = 0; i < count; i += 2) {
      const [one, other] = [brings(i), brings(i + 1)];
      const best = [one >= other && one > 0 ? 1 : 0, other > one && other > 0 ? 1 : 0];
      expect([...step.value.kept.subarray(i, i + 2)]).toEqual(best);
    }
  });
});
