/** Simulated annealing over keep-sets, to see whether anything beats the search. */
import { random01 } from '../src/geometry/random.ts';
import type { KeepProblem } from '../src/plan/search.ts';

/**
 * Best worth met in so many single flips and swaps from all kept, cooled from one fig to a thousandth of one (Kirkpatrick, Gelatt and
 * Vecchi 1983, Optimization by simulated annealing).
 */
export function anneal(problem: KeepProblem, evaluations: number, seed: number): number {
  const { count } = problem;
  let value = problem.value();
  let best = value;
  for (let n = 0; n < evaluations; n++) {
    const warmth = 0.001 ** (n / evaluations);
    const first = Math.floor(random01(seed, n, 1) * count);
    const second = random01(seed, n, 2) < 0.5 ? Math.floor(random01(seed, n, 3) * count) : first;
    problem.flip(first);
    if (second !== first) problem.flip(second);
    const next = problem.value();
    if (next >= value || random01(seed, n, 4) < Math.exp((next - value) / warmth)) value = next;
    else {
      problem.flip(first);
      if (second !== first) problem.flip(second);
    }
    best = Math.max(best, value);
  }
  return best;
}
