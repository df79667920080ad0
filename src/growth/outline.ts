/** Flat outlines as polygons of [along, across], whose corners can all be seen from the origin. */
export type Outline = readonly (readonly [number, number])[];

type Point = readonly [number, number];

const fanTriangle = (a: Point, b: Point): number => Math.abs(a[0] * b[1] - a[1] * b[0]) / 2;

/** Area of each triangle of the fan from the origin: entry i spans corners i and i + 1 (the last closes the ring). */
function fanAreas(outline: Outline): number[] {
  return outline.map((corner, i) => fanTriangle(corner, outline[(i + 1) % outline.length] as Point));
}

/** Area of the outline, in its own unit squared. */
export const outlineArea = (outline: Outline): number => fanAreas(outline).reduce((sum, a) => sum + a, 0);

/**
 * Makes a picker of points, evenly spread over the outline: three numbers in [0, 1) give one point.
 * Within a triangle: Turk 1990, Graphics Gems, "Generating random points in triangles", method 2.
 */
export function outlinePicker(outline: Outline): (pick: number, a: number, b: number) => Point {
  if (outline.length < 3) {
    throw new Error(`outlinePicker: an outline needs three corners, got ${outline.length}`);
  }
  const upTo: number[] = [];
  let sum = 0;
  for (const area of fanAreas(outline)) upTo.push((sum += area));
  return (pick, a, b) => {
    const found = upTo.findIndex((area) => area > pick * sum);
    const i = found < 0 ? outline.length - 1 : found;
    const [p, q] = [outline[i] as Point, outline[(i + 1) % outline.length] as Point];
    const [s, t] = a + b > 1 ? [1 - a, 1 - b] : [a, b];
    return [s * p[0] + t * q[0], s * p[1] + t * q[1]];
  };
}
