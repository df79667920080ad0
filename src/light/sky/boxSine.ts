/** How high the sun stands in a box of the beam grid. */
import { sunDirection } from '../sun.ts';
import { declinationAtRow, hourAngleAtColumn } from './cells.ts';

/** Least mean sine of elevation of a box that may carry energy. */
export const leastMeanSine = 0.01;

/** Mean over a box of the sine of elevation, 0 where the sun is down: 8 x 8 points, right within 0.2 % for boxes well up. */
export function boxMeanSine(latitudeDeg: number, row: number, column: number): number {
  const points = 8;
  let sum = 0;
  for (let i = 0; i < points; i++) {
    const declination = declinationAtRow(row + (i + 0.5) / points);
    for (let j = 0; j < points; j++) {
      const hourAngle = hourAngleAtColumn(column + (j + 0.5) / points);
      sum += Math.max(0, sunDirection(latitudeDeg, declination, hourAngle)[1]);
    }
  }
  return sum / points ** 2;
}
