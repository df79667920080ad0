/** Balls round things: what single rays far from them need not be told. */
import { bladeStride, type LatticeScene, stemStride } from './scene.ts';

/** By fours in single precision, as `assembly` reads them: x of four balls, y, z, radius, metres. */
export class Balls {
  readonly numbers: Float32Array;

  constructor(count: number) {
    // What fills up the last four reaches nothing.
    this.numbers = new Float32Array(16 * Math.ceil(count / 4)).fill(-1e30);
  }

  put(ball: number, x: number, y: number, z: number, radius: number): void {
    const at = 16 * (ball >> 2) + (ball & 3);
    // Some ten times what rounding can take away, here and where a ball is looked at.
    const margin = 1e-6 * (Math.abs(x) + Math.abs(y) + Math.abs(z) + radius);
    this.numbers[at] = x;
    this.numbers[at + 4] = y;
    this.numbers[at + 8] = z;
    this.numbers[at + 12] = radius + margin;
  }
}

/**
 * Balls round parallelograms.
 * @param blade numbers of each from stride x number on: a corner and two sides, x, y, z each
 */
export function ballsOfParallelograms(blade: Float64Array, count: number, stride: number): Float32Array {
  const balls = new Balls(count);
  for (let b = 0; b < count; b++) {
    const at = b * stride;
    const number = (k: number): number => blade[at + k] as number;
    const middle = (k: number): number => number(k) + (number(k + 3) + number(k + 6)) / 2;
    let [along, across] = [0, 0];
    for (let k = 3; k < 6; k++) {
      along += (number(k) + number(k + 3)) ** 2;
      across += (number(k) - number(k + 3)) ** 2;
    }
    balls.put(b, middle(0), middle(1), middle(2), Math.sqrt(Math.max(along, across)) / 2);
  }
  return balls.numbers;
}

export const ballsOfBlades = ({ bladeCount, blade }: LatticeScene): Float32Array =>
  ballsOfParallelograms(blade, bladeCount, bladeStride);

export function ballsOfStems({ stemCount, stem }: LatticeScene): Float32Array {
  const balls = new Balls(stemCount);
  for (let n = 0; n < stemCount; n++) {
    const at = n * stemStride;
    const number = (k: number): number => stem[at + k] as number;
    const middle = (k: number): number => number(k) + number(k + 3) / 2;
    const length = Math.hypot(number(3), number(4), number(5));
    balls.put(n, middle(0), middle(1), middle(2), length / 2 + Math.max(number(6), number(7)));
  }
  return balls.numbers;
}
