// One direction of a wave brought up to date; the twin of `retraceLeafWave.ts`, `oldRuns.ts` and `lattice/part.ts` in
// `src/light/trace`, with the same runs in the same order. AssemblyScript, not TypeScript.

import {
  begin,
  castBlades,
  castStems,
  columns,
  firstColumn,
  firstRow,
  followedAt,
  hitCount,
  makeSweepRoom,
  outAt,
  outRayAt,
  rayAt,
  rows,
  runCount,
  setBox,
  spanLeftAt,
  spanRightAt,
} from './lattice';
import { take } from './memory';

/** Things whose rays are followed again: ranges of blades, then of stems, as first and end (excluded). */
export let rangeAt: usize = 0;
let bladeRanges: i32 = 0;
let stemRanges: i32 = 0;
/** New code of the code k of a hit, at k + number of kinds; asked only where some differ. */
export let codeAfterAt: usize = 0;
let kinds: i32 = 0;
let isSameCode: bool = true;

/** The rays that are followed, increasing. */
export let listedAt: usize = 0;
let listed: i32 = 0;
let listRoom: i32 = 0;

/** Hits and rays of the direction as it was; new numbers of its rays, -1 for those outside the window. */
export let oldHitAt: usize = 0;
export let oldRayAt: usize = 0;
let newRayAt: usize = 0;
let oldHits: i32 = 0;
let oldRuns: i32 = 0;
let oldHitRoom: i32 = 0;
let oldRunRoom: i32 = 0;
/** The same as it is now. */
export let mergedHitAt: usize = 0;
export let mergedRayAt: usize = 0;
export let mergedRuns: i32 = 0;
let mergedHits: i32 = 0;
let mergedHitRoom: i32 = 0;
let mergedRunRoom: i32 = 0;

export function setUpRetrace(bladeRangeCount: i32, stemRangeCount: i32, kindCount: i32, isSame: bool): void {
  bladeRanges = bladeRangeCount;
  stemRanges = stemRangeCount;
  rangeAt = take(8 * (bladeRangeCount + stemRangeCount));
  kinds = kindCount;
  isSameCode = isSame;
  codeAfterAt = take(8 * kindCount);
}

function rowAt(y: i32): usize {
  return (<usize>y) << 2;
}

/** Finds the hits of the things whose rays are to be followed, on all rays of the window. */
export function markThings(): void {
  makeSweepRoom(rows, rows * columns);
  for (let y = 0; y < rows; y++) {
    store<i32>(spanLeftAt + rowAt(y), firstColumn);
    store<i32>(spanRightAt + rowAt(y), firstColumn + columns - 1);
  }
  begin(false);
  let at = rangeAt;
  for (let k = 0; k < bladeRanges; k++, at += 8) castBlades(load<i32>(at), load<i32>(at, 4));
  for (let k = 0; k < stemRanges; k++, at += 8) castStems(load<i32>(at), load<i32>(at, 4));
}

/** Lists the rays of all hits there are, in order and each once; returns how many. Their hits go by their places in the list. */
export function listRays(): i32 {
  for (let y = 0; y < rows; y++) {
    store<i32>(spanLeftAt + rowAt(y), firstColumn + columns);
    store<i32>(spanRightAt + rowAt(y), firstColumn - 1);
  }
  const marks = hitCount;
  if (marks > listRoom) {
    listRoom = 2 * marks;
    listedAt = take(4 * listRoom);
  }
  let low = rows;
  let high = -1;
  for (let k = 0; k < marks; k++) {
    const ray = load<i32>(rayAt + ((<usize>k) << 2));
    const y = ray / columns;
    const x = firstColumn + ray - y * columns;
    store<i32>(followedAt + ((<usize>ray) << 2), 1);
    if (x < load<i32>(spanLeftAt + rowAt(y))) store<i32>(spanLeftAt + rowAt(y), x);
    if (x > load<i32>(spanRightAt + rowAt(y))) store<i32>(spanRightAt + rowAt(y), x);
    low = min(low, y);
    high = max(high, y);
  }
  let left = firstColumn + columns;
  let right = firstColumn - 1;
  listed = 0;
  for (let y = low; y <= high; y++) {
    const from = load<i32>(spanLeftAt + rowAt(y));
    const to = load<i32>(spanRightAt + rowAt(y));
    left = min(left, from);
    right = max(right, to);
    for (let ray = y * columns + from - firstColumn, end = ray + to - from; ray <= end; ray++) {
      const at = followedAt + ((<usize>ray) << 2);
      if (load<i32>(at) == 0) continue;
      store<i32>(listedAt + ((<usize>listed) << 2), ray);
      store<i32>(at, ++listed);
    }
  }
  setBox(left, right, firstRow + low, firstRow + high);
  return listed;
}

/** Room for a direction as it was. */
export function makeOldRoom(hits: i32, runs: i32): void {
  oldHits = hits;
  oldRuns = runs;
  if (hits > oldHitRoom) {
    oldHitRoom = hits + (hits >> 1);
    oldHitAt = take(4 * oldHitRoom);
  }
  if (runs > oldRunRoom) {
    oldRunRoom = runs + (runs >> 1);
    oldRayAt = take(4 * oldRunRoom);
    newRayAt = take(4 * oldRunRoom);
  }
}

function makeMergedRoom(hits: i32, runs: i32): void {
  if (hits > mergedHitRoom) {
    mergedHitRoom = hits + (hits >> 1);
    mergedHitAt = take(4 * mergedHitRoom);
  }
  if (runs > mergedRunRoom) {
    mergedRunRoom = runs + (runs >> 1);
    mergedRayAt = take(4 * mergedRunRoom);
  }
}

/** What was copied last ends here: the next run and its first hit. */
let nextRun: i32 = 0;
let nextHit: i32 = 0;
let outside: i32 = 0;

/** Numbers the rays in a window that was another before. */
function renumber(left: i32, low: i32, columnsBefore: i32): void {
  const across = left - firstColumn;
  const up = low - firstRow;
  let y = up;
  let rowStart = 0;
  for (let run: usize = 0; run < <usize>oldRuns; run++) {
    const was = load<i32>(oldRayAt + (run << 2));
    for (; was >= rowStart + columnsBefore; y++) rowStart += columnsBefore;
    const x = was - rowStart + across;
    const isOutside = x < 0 || x >= columns || y < 0 || y >= rows;
    store<i32>(newRayAt + (run << 2), isOutside ? -1 : y * columns + x);
    if (isOutside) outside++;
  }
}

/** Where the hits of so many runs from `nextHit` on end. */
function endOfRuns(runs: i32): i32 {
  let left = runs;
  let k = nextHit;
  for (; k + 4 <= oldHits; k += 4) {
    // A run begins with a code below 0.
    const begun = popcnt(i32x4.bitmask(v128.load(oldHitAt + ((<usize>k) << 2))));
    if (begun > left) break;
    left -= begun;
  }
  for (; k < oldHits; k++) {
    if (load<i32>(oldHitAt + ((<usize>k) << 2)) >= 0) continue;
    if (left-- == 0) break;
  }
  return k;
}

function copyRuns(to: i32, isSameWindow: bool): void {
  if (to == nextRun) return;
  const end = endOfRuns(to - nextRun);
  const rays = (isSameWindow ? oldRayAt : newRayAt) + ((<usize>nextRun) << 2);
  memory.copy(mergedRayAt + ((<usize>mergedRuns) << 2), rays, (<usize>(to - nextRun)) << 2);
  const from = oldHitAt + ((<usize>nextHit) << 2);
  const into = mergedHitAt + ((<usize>mergedHits) << 2);
  const bytes = (<usize>(end - nextHit)) << 2;
  if (isSameCode) memory.copy(into, from, bytes);
  else {
    const codes = codeAfterAt + ((<usize>kinds) << 2);
    for (let at: usize = 0; at < bytes; at += 4)
      store<i32>(into + at, load<i32>(codes + ((<usize>load<i32>(from + at)) << 2)));
  }
  mergedRuns += to - nextRun;
  mergedHits += end - nextHit;
  nextRun = to;
  nextHit = end;
}

function skipRun(): void {
  nextRun++;
  nextHit++;
  while (nextHit < oldHits && load<i32>(oldHitAt + ((<usize>nextHit) << 2)) >= 0) nextHit++;
}

/** Copies the runs of all rays whose number was less, but those outside. */
function copyUpTo(ray: i32, isSameWindow: bool): void {
  let to = nextRun;
  while (to < oldRuns && load<i32>(oldRayAt + ((<usize>to) << 2)) < ray) to++;
  if (outside > 0) {
    for (let run = nextRun; run < to; run++) {
      if (load<i32>(newRayAt + ((<usize>run) << 2)) >= 0) continue;
      copyRuns(run, isSameWindow);
      skipRun();
    }
  }
  copyRuns(to, isSameWindow);
}

/**
 * Puts what `collect` found on the listed rays in the place of what was there, in the window of before; returns how many hits the
 * direction has now.
 * @param found how many hits `collect` gave
 */
export function mergeRuns(found: i32, left: i32, low: i32, columnsBefore: i32, rowsBefore: i32): i32 {
  makeMergedRoom(oldHits + found, oldRuns + runCount);
  nextRun = 0;
  nextHit = 0;
  outside = 0;
  mergedRuns = 0;
  mergedHits = 0;
  const isSame = left == firstColumn && low == firstRow && columnsBefore == columns && rowsBefore == rows;
  if (!isSame) renumber(left, low, columnsBefore);
  let run = 0;
  let hit = 0;
  for (let k = 0; k < listed; k++) {
    const ray = load<i32>(listedAt + ((<usize>k) << 2));
    store<i32>(followedAt + ((<usize>ray) << 2), 0);
    const row = ray / columns;
    const x = firstColumn + ray - row * columns - left;
    const y = firstRow + row - low;
    const was = y * columnsBefore + min(columnsBefore, max(0, x));
    copyUpTo(was, isSame);
    const isInside = x >= 0 && y >= 0 && x < columnsBefore && y < rowsBefore;
    if (isInside && nextRun < oldRuns && load<i32>(oldRayAt + ((<usize>nextRun) << 2)) == was) skipRun();
    if (run == runCount || load<i32>(outRayAt + ((<usize>run) << 2)) != k) continue;
    run++;
    store<i32>(mergedRayAt + ((<usize>mergedRuns) << 2), ray);
    mergedRuns++;
    do {
      store<i32>(mergedHitAt + ((<usize>mergedHits) << 2), load<i32>(outAt + ((<usize>hit) << 2)));
      mergedHits++;
      hit++;
    } while (hit < found && load<i32>(outAt + ((<usize>hit) << 2)) >= 0);
  }
  listed = 0;
  copyUpTo(i32.MAX_VALUE, isSame);
  return mergedHits;
}
