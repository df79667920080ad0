/** The rays of a traced wave that a change of the scene leaves as they were. */
import type { LeafWave } from '../leafLedger.ts';
import type { Collected } from './lattice/collect.ts';
import type { Lattice } from './lattice/lattice.ts';
import type { RayList } from './lattice/part.ts';

interface Place {
  readonly direction: number;
  readonly lattice: Lattice;
  /** Rays that were followed again. */
  readonly rays: RayList;
}

type Window = Pick<Lattice, 'left' | 'low' | 'columns' | 'rows'>;

/** How much of a lattice a direction of the wave was traced on. */
export function windowOf({ window }: LeafWave, direction: number): Window {
  const at = 4 * direction;
  const [left, low] = [window[at] as number, window[at + 1] as number];
  return { left, low, columns: window[at + 2] as number, rows: window[at + 3] as number };
}

const isSameWindow = (a: Window, b: Window): boolean =>
  a.left === b.left && a.low === b.low && a.columns === b.columns && a.rows === b.rows;

/** Copies runs of a wave, one direction at a time. */
class Copier {
  /** New numbers of a direction's rays, and the runs whose rays are outside the new lattice. */
  private ray: Int32Array = new Int32Array(1024);
  private outside: Int32Array = new Int32Array(16);
  private outsideCount = 0;
  private isOutsideNext = 0;
  /** The next run and its first hit, and where those of the direction end. */
  private run = 0;
  private runEnd = 0;
  private hit = 0;
  private hitEnd = 0;
  /** Numbers of the rays, the first of the direction at the entry -shift. */
  private numbers: Int32Array = this.ray;
  private shift = 0;
  private readonly wave: LeafWave;
  /** New code of the code k of a hit, at k + number of kinds; null where all are as they were. */
  private readonly codeAfter: Int32Array | null;
  private readonly into: Collected;

  constructor(wave: LeafWave, codeAfter: Int32Array | null, into: Collected) {
    this.wave = wave;
    this.codeAfter = codeAfter;
    this.into = into;
  }

  /** Begins a direction; makes room for the fresh runs too. */
  begin(direction: number, before: Window, lattice: Lattice, fresh: Collected): void {
    const { hitStart, runStart } = this.wave;
    this.run = runStart[direction] as number;
    this.runEnd = runStart[direction + 1] as number;
    this.hit = hitStart[direction] as number;
    this.hitEnd = hitStart[direction + 1] as number;
    this.outsideCount = 0;
    this.isOutsideNext = 0;
    if (isSameWindow(before, lattice)) [this.numbers, this.shift] = [this.wave.runRay, 0];
    else this.renumber(before, lattice);
    this.into.reserve(fresh.count + this.hitEnd - this.hit, fresh.runs + this.runEnd - this.run);
  }

  private renumber(before: Window, lattice: Lattice): void {
    const { runRay } = this.wave;
    const runs = this.runEnd - this.run;
    if (this.ray.length < runs) this.ray = new Int32Array(2 * runs);
    [this.numbers, this.shift] = [this.ray, -this.run];
    const [across, up] = [before.left - lattice.left, before.low - lattice.low];
    let [row, rowStart] = [0, 0];
    for (let run = 0; run < runs; run++) {
      const was = runRay[this.run + run] as number;
      for (; was >= rowStart + before.columns; row++) rowStart += before.columns;
      const [x, y] = [was - rowStart + across, row + up];
      this.ray[run] = y * lattice.columns + x;
      if (x < 0 || x >= lattice.columns || y < 0 || y >= lattice.rows) this.leaveOut(this.run + run);
    }
  }

  private leaveOut(run: number): void {
    if (this.outsideCount === this.outside.length) {
      const larger = new Int32Array(2 * this.outsideCount);
      larger.set(this.outside);
      this.outside = larger;
    }
    this.outside[this.outsideCount++] = run;
  }

  /** Copies the runs of all rays whose number in the wave is less. */
  upTo(ray: number): void {
    const { runRay } = this.wave;
    let to = this.run;
    while (to < this.runEnd && (runRay[to] as number) < ray) to++;
    for (; this.isOutsideNext < this.outsideCount; this.isOutsideNext++) {
      const out = this.outside[this.isOutsideNext] as number;
      if (out >= to) break;
      this.copy(out);
      this.skip();
    }
    this.copy(to);
  }

  /** Leaves out the next run if it is that of a ray. */
  without(ray: number): void {
    if (this.run < this.runEnd && this.wave.runRay[this.run] === ray) this.skip();
  }

  private skip(): void {
    const { hitKind } = this.wave;
    this.run++;
    for (this.hit++; this.hit < this.hitEnd && (hitKind[this.hit] as number) >= 0; ) this.hit++;
  }

  private copy(to: number): void {
    const { run, numbers, shift, into } = this;
    if (to === run) return;
    const { ray } = into;
    let at = into.runs;
    for (let from = run; from < to; from++) ray[at++] = numbers[from + shift] as number;
    into.runs = at;
    this.run = to;
    this.copyHits(to - run);
  }

  private copyHits(runs: number): void {
    const { hitEnd, codeAfter, into } = this;
    const { hitKind, hitShare } = this.wave;
    const { hit, share, count } = into;
    const [from, kinds] = [this.hit, (codeAfter?.length ?? 0) / 2];
    let [k, at, left] = [from, count, runs];
    for (; k < hitEnd; k++) {
      const code = hitKind[k] as number;
      // One less where a run begins.
      left += code >> 31;
      if (left < 0) break;
      hit[at++] = codeAfter === null ? code : (codeAfter[code + kinds] as number);
    }
    if (share !== null && hitShare !== null) share.set(hitShare.subarray(from, k), count);
    this.hit = k;
    into.count = at;
  }
}

/**
 * New code of the code k of a hit, at k + number of kinds; null where all that are left are as they were.
 * @param kindAfter new number of each kind, -1 for one in no run that is copied
 */
export function codesAfter(kindAfter: Int32Array): Int32Array | null {
  const kinds = kindAfter.length;
  if (kindAfter.every((after, kind) => after === kind || after < 0)) return null;
  return Int32Array.from({ length: 2 * kinds }, (_, at) => {
    const code = at - kinds;
    return code < 0 ? ~(kindAfter[~code] as number) : (kindAfter[code] as number);
  });
}

/** Number of a ray in a window, or of the first ray there that comes after it. */
class OldNumber {
  at = 0;
  isInside = false;

  look(ray: number, { left, low, columns }: Lattice, before: Window): void {
    const row = Math.floor(ray / columns);
    const [x, y] = [left + ray - row * columns - before.left, low + row - before.low];
    this.isInside = x >= 0 && y >= 0 && x < before.columns && y < before.rows;
    this.at = y * before.columns + Math.min(before.columns, Math.max(0, x));
  }
}

export class OldRuns {
  private readonly wave: LeafWave;
  private readonly copier: Copier;
  private readonly into: Collected;
  private readonly was = new OldNumber();

  /**
   * @param kindAfter new number of each kind of the wave
   * @param into what the runs are added to
   */
  constructor(wave: LeafWave, kindAfter: Int32Array, into: Collected) {
    this.wave = wave;
    this.into = into;
    this.copier = new Copier(wave, codesAfter(kindAfter), into);
  }

  /** Adds the runs of a direction in the order of their rays: the fresh ones, and the old ones of all other rays. */
  mergeWith(fresh: Collected, { direction, lattice, rays }: Place): void {
    const { was, copier, into } = this;
    const before = windowOf(this.wave, direction);
    copier.begin(direction, before, lattice, fresh);
    let [run, hit] = [0, 0];
    for (let k = 0; k < rays.count; k++) {
      const ray = rays.ray[k] as number;
      was.look(ray, lattice, before);
      copier.upTo(was.at);
      if (was.isInside) copier.without(was.at);
      if (run < fresh.runs && fresh.ray[run] === rays.inPart[k]) {
        hit = into.appendRun(fresh, hit, ray);
        run++;
      }
    }
    copier.upTo(Number.MAX_SAFE_INTEGER);
  }
}
