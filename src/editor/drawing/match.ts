/**
 * Which place of a branch a place of a new stroke stands for. The branch and the stroke are lists of heights (how far they reach in one
 * direction that both pictures show); places are matched in order so that the heights agree. Method: dynamic time warping, Sakoe and Chiba
 * 1978, IEEE Transactions on Acoustics, Speech and Signal Processing 26, pp. 43-49 (from memory), with a small liking for equal shares of
 * the length, which alone decides where heights do not, as on level wood.
 */

/** A height that is off by the whole spread counts so many times as much as a place that is off by the whole length. Our choice. */
const heightOverPlace = 40;

/**
 * For each stroke sample the place on the branch, 0 at the base to samples - 1 at the tip, never falling; first on first, last on last.
 * @param branch heights at even shares of its length, two or more
 * @param stroke heights at even shares of its length, two or more
 */
export function matchPlaces(branch: ArrayLike<number>, stroke: ArrayLike<number>): readonly number[] {
  const [n, m] = [branch.length, stroke.length];
  if (n < 2 || m < 2) throw new Error(`matchPlaces: two samples or more are needed, got ${n} and ${m}`);
  const cost = costsOf(branch, stroke);
  const total = new Float64Array(n * m).fill(Number.POSITIVE_INFINITY);
  const at = (i: number, j: number): number => (i < 0 || j < 0 ? Infinity : (total[i * m + j] as number));
  total[0] = cost(0, 0);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < m; j++) {
      if (i + j === 0) continue;
      total[i * m + j] = cost(i, j) + Math.min(at(i - 1, j), at(i, j - 1), at(i - 1, j - 1));
    }
  }
  return walkedBack(n, m, at);
}

function costsOf(branch: ArrayLike<number>, stroke: ArrayLike<number>): (i: number, j: number) => number {
  const [n, m] = [branch.length, stroke.length];
  const all = [...Array.from(branch), ...Array.from(stroke)];
  const spread = Math.max(...all) - Math.min(...all) || 1;
  return (i, j) => {
    const height = (heightOverPlace * ((branch[i] as number) - (stroke[j] as number))) / spread;
    const place = i / (n - 1) - j / (m - 1);
    return height * height + place * place;
  };
}

/** The middle of all places that each sample met on the cheapest way; the ends stay ends. */
function walkedBack(n: number, m: number, at: (i: number, j: number) => number): readonly number[] {
  const [sums, counts] = [new Float64Array(m), new Float64Array(m)];
  let [i, j] = [n - 1, m - 1];
  for (;;) {
    sums[j] = (sums[j] as number) + i;
    counts[j] = (counts[j] as number) + 1;
    if (i === 0 && j === 0) break;
    const [both, back, down] = [at(i - 1, j - 1), at(i, j - 1), at(i - 1, j)];
    if (both <= back && both <= down) [i, j] = [i - 1, j - 1];
    else if (back <= down) j -= 1;
    else i -= 1;
  }
  const places = Array.from(sums, (sum, k) => sum / (counts[k] as number));
  places[0] = 0;
  places[m - 1] = n - 1;
  return places;
}
