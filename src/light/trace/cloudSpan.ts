/** Where a beam runs through a cloud. */
import type { Cloud } from '../../geometry/surface.ts';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import { turnAboutUpright } from '../../geometry/world.ts';
import type { BeamFrame } from './receiverGrid.ts';

const axes = [0, 1, 2] as const;

/**
 * A cloud seen along a beam. Places on the plane across the beam, and ahead, count from the cloud's centre (`right0`, `top0`,
 * `ahead0`); its shadow reaches `halfRight` and `halfTop` to either side.
 */
export class CloudSpan {
  readonly right0: number;
  readonly top0: number;
  readonly ahead0: number;
  readonly halfRight: number;
  readonly halfTop: number;
  private enter = 0;
  private leave = 0;
  private readonly isBox: boolean;
  /** The frame's axes in the cloud's own frame, in which it is the unit ball or the cube from -1 to 1. */
  private readonly right: Vec3;
  private readonly top: Vec3;
  private readonly ahead: Vec3;
  private readonly dots: readonly [rr: number, tt: number, aa: number, rt: number, ra: number, ta: number];

  constructor({ centre, form, halfSizeM, turnedDeg = 0 }: Cloud, frame: BeamFrame) {
    const own = (v: Vec3): Vec3 => (turnedDeg === 0 ? v : turnAboutUpright(v, -turnedDeg));
    const scaled = (v: Vec3): Vec3 => [v[0] / halfSizeM[0], v[1] / halfSizeM[1], v[2] / halfSizeM[2]];
    const [right, top, ahead] = [own(frame.right), own(frame.top), own(frame.ahead)];
    this.isBox = form === 'box';
    const halfExtent = (v: Vec3): number => {
      const [x, y, z] = [v[0] * halfSizeM[0], v[1] * halfSizeM[1], v[2] * halfSizeM[2]];
      return this.isBox ? Math.abs(x) + Math.abs(y) + Math.abs(z) : Math.hypot(x, y, z);
    };
    [this.halfRight, this.halfTop] = [halfExtent(right), halfExtent(top)];
    this.right0 = dot(centre, frame.right);
    this.top0 = dot(centre, frame.top);
    this.ahead0 = dot(centre, frame.ahead);
    const [R, T, A] = [scaled(right), scaled(top), scaled(ahead)];
    [this.right, this.top, this.ahead] = [R, T, A];
    this.dots = [dot(R, R), dot(T, T), dot(A, A), dot(R, T), dot(R, A), dot(T, A)];
  }

  /** Looks along the line at (r, t) on the plane; false when it misses. */
  look(r: number, t: number): boolean {
    return this.isBox ? this.lookThroughBox(r, t) : this.lookThroughBall(r, t);
  }

  /** Metres inside the cloud, on the line last looked along, that lie ahead of a place on it. */
  pathM(ahead: number): number {
    return Math.max(0, this.leave - ahead) - Math.max(0, this.enter - ahead);
  }

  /** The point r R + t T + a A lies on the ball where its length is 1, which is a quadratic in a. */
  private lookThroughBall(r: number, t: number): boolean {
    const [rr, tt, aa, rt, ra, ta] = this.dots;
    const middle = -(r * ra + t * ta) / aa;
    const halfSquared = middle * middle - (r * r * rr + 2 * r * t * rt + t * t * tt - 1) / aa;
    if (!(halfSquared > 0)) return false;
    const half = Math.sqrt(halfSquared);
    this.enter = middle - half;
    this.leave = middle + half;
    return true;
  }

  /** Between both faces of each of the three pairs; Kay and Kajiya 1986, SIGGRAPH 20:269. */
  private lookThroughBox(r: number, t: number): boolean {
    let [enter, leave] = [-Infinity, Infinity];
    for (const k of axes) {
      const at = r * this.right[k] + t * this.top[k];
      const step = this.ahead[k];
      if (step === 0) {
        if (!(Math.abs(at) < 1)) return false;
        continue;
      }
      const [one, other] = [(-1 - at) / step, (1 - at) / step];
      enter = Math.max(enter, Math.min(one, other));
      leave = Math.min(leave, Math.max(one, other));
    }
    this.enter = enter;
    this.leave = leave;
    return leave > enter;
  }
}
