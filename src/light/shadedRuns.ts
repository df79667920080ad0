/** What each owner shades, copied one behind the other: so that a tick reads straight on and jumps nowhere. */
import { type LeafWave, rowNumbers } from './leafLedger.ts';

/** The runs of a wave owner by owner: one that several owners shade in is there for each of them. */
export interface ShadedRuns {
  /** Those of owner o are the stretches stretchStart[o] to stretchStart[o + 1] (excluded), each within one row of the wave. */
  readonly stretchStart: Int32Array;
  readonly row: Int32Array;
  /** Where the hits of a stretch end; they begin where those of the one before end. */
  readonly end: Float64Array;
  /** Kind of each hit; where a run begins ~kind, as in the wave. 2 bytes where there are few kinds, else 4. */
  readonly code: Int16Array | Int32Array;
  /** Share of light that clouds let through to the hit; null where there are none. */
  readonly share: Float32Array | null;
}

/** Calls with each owner above 0 that shades leaves of a run, once a run: its hits are `first` to `end` (excluded). */
function eachShade(
  wave: LeafWave,
  ownerCount: number,
  visit: (owner: number, row: number, first: number, end: number) => void,
): void {
  const { hitKind, kindOwner, runStart, landing } = wave;
  const [lastRun, rowOf] = [new Int32Array(ownerCount).fill(-1), rowNumbers(wave)];
  let [run, direction] = [0, 0];
  for (let first = 0, end = 0; first < hitKind.length; first = end, run++) {
    for (end = first + 1; end < hitKind.length && (hitKind[end] as number) >= 0; ) end++;
    while (run >= (runStart[direction + 1] as number)) direction++;
    const row = rowOf(direction, landing === undefined ? 0 : (landing.runZone[run] as number));
    // The last hit of a run is a leaf and shades none.
    for (let k = first; k < end - 1; k++) {
      const code = hitKind[k] as number;
      const owner = kindOwner[code < 0 ? ~code : code] as number;
      if (owner === 0 || lastRun[owner] === run) continue;
      lastRun[owner] = run;
      visit(owner, row, first, end);
    }
  }
}

/** From how many each owner has to where its first one is. */
function starts<T extends Int32Array | Float64Array>(counts: T): T {
  let sum = 0;
  counts.forEach((count, owner) => {
    counts[owner] = sum;
    sum += count;
  });
  return counts;
}

/** Looks at every hit of the wave twice. */
export function shadedRuns(wave: LeafWave, ownerCount: number): ShadedRuns {
  const { hitKind, hitShare, kindGroup } = wave;
  const [stretches, hits] = [new Int32Array(ownerCount + 1), new Float64Array(ownerCount + 1)];
  const lastRow = new Int32Array(ownerCount).fill(-1);
  eachShade(wave, ownerCount, (owner, row, first, end) => {
    hits[owner] = (hits[owner] as number) + end - first;
    if (lastRow[owner] === row) return;
    lastRow[owner] = row;
    stretches[owner] = (stretches[owner] as number) + 1;
  });
  const [stretchStart, next] = [starts(stretches), starts(hits)];
  const [stretchCount, hitCount] = [stretchStart[ownerCount] as number, next[ownerCount] as number];
  const [row, end] = [new Int32Array(stretchCount), new Float64Array(stretchCount)];
  const code = new (kindGroup.length <= 0x8000 ? Int16Array : Int32Array)(hitCount);
  const share = hitShare === null ? null : new Float32Array(hitCount);
  const stretch = stretchStart.map((first) => first - 1);
  lastRow.fill(-1);
  eachShade(wave, ownerCount, (owner, itsRow, first, last) => {
    let at = next[owner] as number;
    for (let k = first; k < last; k++, at++) {
      code[at] = hitKind[k] as number;
      if (share !== null) share[at] = hitShare?.[k] as number;
    }
    next[owner] = at;
    if (lastRow[owner] !== itsRow) stretch[owner] = (stretch[owner] as number) + 1;
    lastRow[owner] = itsRow;
    row[stretch[owner] as number] = itsRow;
    end[stretch[owner] as number] = at;
  });
  return { stretchStart, row, end, code, share };
}
