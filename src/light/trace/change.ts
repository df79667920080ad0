/** What two scenes have in common, so that only rays of and through what differs need be traced again. */
import type { Outline } from '../../geometry/outline.ts';
import { fixedOwner, type Surface } from '../../geometry/surface.ts';

export interface SceneChange {
  /**
   * Per surface of the scene after: its index in the scene before, -1 for one that is new or has moved. Increasing where it is
   * not -1, so that what is the same comes in the same order in both.
   */
  readonly surfaceBefore: Int32Array;
  /**
   * Per owner of the scene before: its number after, -1 where none of its surfaces is left as it was. Owner 0 stays 0; no
   * two owners become one.
   */
  readonly ownerAfter: Int32Array;
}

function sameNumbers(a: ArrayLike<number>, b: ArrayLike<number>): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function sameOutline(a: Outline, b: Outline): boolean {
  return a === b || (a.length === b.length && a.every((point, i) => sameNumbers(point, b[i] ?? [])));
}

/** Whether rays meet both alike; owners are left to `ownersAfter`. */
function isSame(a: Surface, b: Surface): boolean {
  if (a === b) return true;
  const [p, q] = [a.optics, b.optics];
  if (p.transmittance !== q.transmittance || p.reflectance !== q.reflectance) return false;
  if (a.shape === 'blade') {
    if (b.shape !== 'blade' || !sameNumbers(a.origin, b.origin) || !sameNumbers(a.along, b.along))
      return false;
    return sameNumbers(a.across, b.across) && sameOutline(a.outline, b.outline);
  }
  if (a.shape === 'stem') {
    if (b.shape !== 'stem' || !sameNumbers(a.from, b.from) || !sameNumbers(a.to, b.to)) return false;
    return a.fromRadiusM === b.fromRadiusM && a.toRadiusM === b.toRadiusM;
  }
  if (a.shape === 'mesh') return b.shape === 'mesh' && sameNumbers(a.triangles, b.triangles);
  if (b.shape !== 'cloud' || (a.form ?? 'ellipsoid') !== (b.form ?? 'ellipsoid')) return false;
  const isTurnedAlike = (a.turnedDeg ?? 0) === (b.turnedDeg ?? 0) && a.extinctionPerM === b.extinctionPerM;
  return isTurnedAlike && sameNumbers(a.centre, b.centre) && sameNumbers(a.halfSizeM, b.halfSizeM);
}

/** A number that is the same for surfaces that are the same, and seldom for others. */
function keyOf(surface: Surface): number {
  const mixed = (v: ArrayLike<number>): number =>
    (v[0] as number) + 1.37 * (v[1] as number) + 2.23 * (v[2] as number);
  switch (surface.shape) {
    case 'blade':
      return mixed(surface.origin) + 3.1 * mixed(surface.along);
    case 'stem':
      return mixed(surface.from) + 3.3 * mixed(surface.to);
    case 'mesh':
      return surface.triangles.length === 0 ? 0 : mixed(surface.triangles);
    case 'cloud':
      return mixed(surface.centre) + 3.7 * mixed(surface.halfSizeM);
  }
}

/** Finds surfaces of the scene before by what they are; each is given out once. */
class Finder {
  private readonly before: readonly Surface[];
  private readonly isTaken: Uint8Array;
  private byKey: Map<number, number[]> | null = null;
  private expected = 0;

  constructor(before: readonly Surface[]) {
    this.before = before;
    this.isTaken = new Uint8Array(before.length);
  }

  /** Index before, -1 for none. */
  take(surface: Surface): number {
    const found = this.find(surface);
    if (found < 0) return -1;
    this.isTaken[found] = 1;
    this.expected = found + 1;
    return found;
  }

  /** Mostly it is the one behind the last, and no key need be made. */
  private find(surface: Surface): number {
    const next = this.before[this.expected];
    if (next !== undefined && this.isTaken[this.expected] === 0 && isSame(next, surface))
      return this.expected;
    this.byKey ??= this.makeKeys();
    const candidates = this.byKey.get(keyOf(surface)) ?? [];
    return candidates.find((i) => this.isTaken[i] === 0 && isSame(this.before[i] as Surface, surface)) ?? -1;
  }

  private makeKeys(): Map<number, number[]> {
    const byKey = new Map<number, number[]>();
    this.before.forEach((surface, i) => {
      const key = keyOf(surface);
      const known = byKey.get(key);
      if (known === undefined) byKey.set(key, [i]);
      else known.push(i);
    });
    return byKey;
  }
}

/** Sets all entries to -1 but those of a longest increasing run of what is not; Schensted 1961, by patience sorting. */
function keepIncreasing(values: Int32Array): void {
  const [ends, previous]: [number[], Int32Array] = [[], new Int32Array(values.length).fill(-1)];
  values.forEach((value, at) => {
    if (value < 0) return;
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((values[ends[middle] as number] as number) < value) low = middle + 1;
      else high = middle;
    }
    previous[at] = low > 0 ? (ends[low - 1] as number) : -1;
    ends[low] = at;
  });
  const isKept = new Uint8Array(values.length);
  for (let at = ends.at(-1) ?? -1; at >= 0; at = previous[at] as number) isKept[at] = 1;
  values.forEach((_, at) => {
    if (isKept[at] === 0) values[at] = -1;
  });
}

/** Pairs owners by the surfaces that stayed; a surface whose owner is paired otherwise counts as new. */
function ownersAfter(
  before: readonly Surface[],
  after: readonly Surface[],
  surfaceBefore: Int32Array,
): Int32Array {
  const count = before.reduce((most, { owner }) => Math.max(most, owner + 1), 1);
  const ownerAfter = new Int32Array(count).fill(-1);
  const ownerBefore = new Map<number, number>([[fixedOwner, fixedOwner]]);
  ownerAfter[fixedOwner] = fixedOwner;
  surfaceBefore.forEach((was, i) => {
    if (was < 0) return;
    const [from, to] = [(before[was] as Surface).owner, (after[i] as Surface).owner];
    if (ownerAfter[from] === -1 && !ownerBefore.has(to)) {
      ownerAfter[from] = to;
      ownerBefore.set(to, from);
    }
    if (ownerAfter[from] !== to) surfaceBefore[i] = -1;
  });
  return ownerAfter;
}

/** Compares two scenes surface by surface, by what they are and never by their place in the list. */
export function sceneChange(before: readonly Surface[], after: readonly Surface[]): SceneChange {
  const finder = new Finder(before);
  const surfaceBefore = Int32Array.from(after, (surface) => finder.take(surface));
  keepIncreasing(surfaceBefore);
  return { surfaceBefore, ownerAfter: ownersAfter(before, after, surfaceBefore) };
}
