/** Flat outlines cut into triangles. */
import { type Outline, signedArea } from '../../geometry/outline.ts';

type Point = Outline[number];

/** Twice the area of a triangle, above 0 when its corners run anticlockwise. */
const turn = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

const holds = (a: Point, b: Point, c: Point, p: Point): boolean =>
  turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0;

/**
 * Triangles, as three indices into the outline each, that together cover exactly the inside of an outline which does not
 * cross itself, in either turn. Ears are cut off one by one (Meisters 1975, American Mathematical Monthly 82:648).
 * Throws when there is no ear left to cut.
 */
export function earClip(outline: Outline): [number, number, number][] {
  const left = outline.map((_, i) => i);
  if (signedArea(outline) < 0) left.reverse();
  const at = (i: number): Point => outline[left[(i + left.length) % left.length] as number] as Point;
  const isEar = (i: number): boolean => {
    const [a, b, c] = [at(i - 1), at(i), at(i + 1)];
    const corners = [a, b, c];
    return (
      turn(a, b, c) > 0 &&
      !left.some((k) => {
        const p = outline[k] as Point;
        return !corners.includes(p) && holds(a, b, c, p);
      })
    );
  };
  const triangles: [number, number, number][] = [];
  while (left.length >= 3) {
    const flat = left.findIndex((_, i) => turn(at(i - 1), at(i), at(i + 1)) === 0);
    const ear = flat >= 0 ? flat : left.findIndex((_, i) => isEar(i));
    if (ear < 0)
      throw new Error(`earClip: the outline crosses itself, got ${left.length} points without an ear`);
    const index = (i: number): number => left[(i + left.length) % left.length] as number;
    if (flat < 0) triangles.push([index(ear - 1), index(ear), index(ear + 1)]);
    left.splice(ear, 1);
  }
  return triangles;
}
