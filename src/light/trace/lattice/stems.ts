/** Stems on a lattice of rays: the hull of two discs; a ray leaves the wood at the far side, towards the light. */
import type { Hits } from './hits.ts';
import type { Lattice } from './lattice.ts';
import { along, Cover } from './plane.ts';
import { type LatticeScene, stemStride } from './scene.ts';
import type { Sweep } from './sweep.ts';

/** Share of the squared length under which a stem counts as seen end-on, as in the point grid. */
const endOn = 1e-6;
const goldenShare = (Math.sqrt(5) - 1) / 2;
const goldenSteps = 64;
const missed = -Infinity;
/** Flatter than this a stem is taken row by row as wide as it is. */
const leastSlant = 1e-3;
/** In columns: far above rounding. */
const stripMargin = 1e-6;

/**
 * A stem on the plane, metres: the ball at the share s along it has its centre at (right, top, ahead) + s (dRight, dTop, dAhead) and
 * the radius `radius` + s dRadius. See `stems.ts` of the point grid for a, tilt and what follows from them.
 */
class SeenStem extends Cover {
  right0 = 0;
  top0 = 0;
  ahead0 = 0;
  dRight = 0;
  dTop = 0;
  dAhead = 0;
  radius = 0;
  dRadius = 0;
  a = 0;
  tilt = 0;
  isEndOn = false;
  /** In row y rays meet it only within `halfX` columns of midX + y slopeX. */
  midX = 0;
  slopeX = 0;
  halfX = 0;

  /** False when no ray can meet it. */
  look(stem: Float64Array, at: number, lattice: Lattice): boolean {
    const { frame, spacingM } = lattice;
    const perM = 1 / spacingM;
    const [r0, r1] = [stem[at + 6] as number, stem[at + 7] as number];
    const right0 = along(stem, at, frame.right) - lattice.right;
    const dRight = along(stem, at + 3, frame.right);
    const left = Math.min(right0 - r0, right0 + dRight - r1) * perM;
    if (!this.setColumns(left, Math.max(right0 + r0, right0 + dRight + r1) * perM, lattice)) return false;
    const top0 = along(stem, at, frame.top) - lattice.top;
    const dTop = along(stem, at + 3, frame.top);
    const low = Math.min(top0 - r0, top0 + dTop - r1) * perM;
    if (!this.setRows(low, Math.max(top0 + r0, top0 + dTop + r1) * perM, lattice)) return false;
    const dAhead = along(stem, at + 3, frame.ahead);
    const a = dRight * dRight + dTop * dTop - (r1 - r0) * (r1 - r0);
    this.right0 = right0;
    this.top0 = top0;
    this.ahead0 = along(stem, at, frame.ahead);
    this.dRight = dRight;
    this.dTop = dTop;
    this.dAhead = dAhead;
    this.radius = r0;
    this.dRadius = r1 - r0;
    this.a = a;
    this.isEndOn = a <= endOn * (dRight * dRight + dTop * dTop + dAhead * dAhead);
    this.setStrip(spacingM, Math.max(r0, r1));
    this.tilt = this.isEndOn ? 0 : dAhead / Math.sqrt(a * (a + dAhead * dAhead));
    return true;
  }

  /** The strip as wide as its thicker end, along its middle, holds all of it; of use where it runs across the rows. */
  private setStrip(spacingM: number, radius: number): void {
    const { dRight, dTop, right0, top0 } = this;
    const length = Math.hypot(dRight, dTop);
    const isAcross = Math.abs(dTop) > leastSlant * length;
    this.halfX = isAcross ? (radius * length) / Math.abs(dTop) / spacingM + stripMargin : Infinity;
    this.slopeX = isAcross ? dRight / dTop : 0;
    this.midX = (right0 - top0 * this.slopeX) / spacingM;
  }

  /** How far ahead of its first end's middle the ray leaves it. */
  exit(right: number, top: number): number {
    const { a, radius } = this;
    const b = right * this.dRight + top * this.dTop + radius * this.dRadius;
    const c = radius * radius - right * right - top * top;
    const squared = c + (b * b) / a;
    if (!(squared > 0)) return missed;
    const s = Math.min(1, Math.max(0, b / a + this.tilt * Math.sqrt(squared)));
    const q = c + s * (2 * b - a * s);
    return q > 0 ? s * this.dAhead + Math.sqrt(q) : missed;
  }

  /**
   * The same where it is seen end-on. The balls' far sides are concave in s where the ray meets a ball, and the gap to a ball is
   * convex, so golden-section search finds the farthest; Kiefer 1953.
   */
  endOnExit(right: number, top: number): number {
    const far = (s: number): number => {
      const ballRadius = this.radius + s * this.dRadius;
      const off = Math.hypot(right - s * this.dRight, top - s * this.dTop);
      if (!(off < ballRadius)) return -1e12 * (1 + off - ballRadius);
      return s * this.dAhead + Math.sqrt(ballRadius * ballRadius - off * off);
    };
    let [low, high, best] = [0, 1, Math.max(far(0), far(1))];
    for (let k = 0; k < goldenSteps; k++) {
      const [s1, s2] = [high - goldenShare * (high - low), low + goldenShare * (high - low)];
      const [far1, far2] = [far(s1), far(s2)];
      best = Math.max(best, far1, far2);
      if (far1 > far2) high = s2;
      else low = s1;
    }
    return best > -1e11 ? best : missed;
  }
}

function fill(seen: SeenStem, thing: number, { lattice, followed }: Sweep, hits: Hits): void {
  const { low, high, right0, top0, ahead0 } = seen;
  const { spacingM, columns } = lattice;
  const { isSparse } = followed;
  hits.reserve(seen.rays);
  for (let y = low; y <= high; y++) {
    const row = y - lattice.low;
    const mid = seen.midX + y * seen.slopeX;
    const left = Math.max(seen.left, followed.left[row] as number, Math.ceil(mid - seen.halfX));
    const right = Math.min(seen.right, followed.right[row] as number, Math.floor(mid + seen.halfX));
    const ray = row * columns - lattice.left;
    const top = y * spacingM - top0;
    for (let x = left; x <= right; x++) {
      const number = isSparse ? (followed.ray[ray + x] as number) - 1 : ray + x;
      if (number < 0) continue;
      const across = x * spacingM - right0;
      const exit = seen.isEndOn ? seen.endOnExit(across, top) : seen.exit(across, top);
      if (exit !== missed) hits.add(number, ahead0 + exit, thing);
    }
  }
}

/** Finds the hits of a sweep on stems. */
export function makeStemCaster({
  bladeCount,
  stemCount,
  stem,
}: LatticeScene): (sweep: Sweep, hits: Hits) => void {
  const seen = new SeenStem();
  return (sweep, hits) => {
    for (let n = 0; n < stemCount; n++) {
      if (seen.look(stem, n * stemStride, sweep.lattice)) fill(seen, bladeCount + n, sweep, hits);
    }
  };
}

/** Casts only the stems listed. */
export function makeEndOnCaster({
  bladeCount,
  stem,
}: LatticeScene): (stems: Int32Array, sweep: Sweep, hits: Hits) => void {
  const seen = new SeenStem();
  return (stems, sweep, hits) => {
    for (const n of stems) {
      if (seen.look(stem, n * stemStride, sweep.lattice)) fill(seen, bladeCount + n, sweep, hits);
    }
  };
}
