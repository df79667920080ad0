/**
 * Outline of a fig's blade: five lobes, heart-shaped at the base. Midrib of 1 from the petiole at [0, 0]
 * to the tip at [1, 0]; the second number runs across. Any point of the edge can be seen from the
 * petiole, so a fan of triangles from there fills the blade.
 *
 * Five lobes are the rule in 26 cultivars (Abdelkader et al. 2023, Horticulturae 9:612). The lengths of
 * the lobes and the depth of the bays are our choice, drawn so that a blade of 20 cm is about 21 cm wide
 * when it is given the published area.
 */
type Corner = readonly [angleDeg: number, reach: number];

/** From the tip round one side to the petiole: degrees off the midrib, distance from the petiole. */
const rightHalf: readonly Corner[] = [
  [0, 1],
  [4, 0.975],
  [9, 0.9],
  [14, 0.78],
  [18.5, 0.645],
  [22.5, 0.515],
  [26, 0.435],
  [30, 0.425],
  [34.5, 0.505],
  [39.5, 0.63],
  [44, 0.715],
  [48, 0.75],
  [52, 0.755],
  [56, 0.725],
  [61, 0.655],
  [67, 0.555],
  [73, 0.465],
  [79, 0.41],
  [85, 0.395],
  [92, 0.417],
  [101, 0.445],
  [112, 0.445],
  [124, 0.4],
  [138, 0.325],
  [152, 0.235],
  [165, 0.14],
  [175, 0.065],
];

const corner = (angleDeg: number, reach: number): readonly [number, number] => {
  const a = (angleDeg * Math.PI) / 180;
  return [reach * Math.cos(a), reach * Math.sin(a)];
};

export const figLeafOutline: readonly (readonly [number, number])[] = [
  ...rightHalf.map(([angleDeg, reach]) => corner(angleDeg, reach)),
  ...rightHalf
    .slice(1)
    .reverse()
    .map(([angleDeg, reach]) => corner(-angleDeg, reach)),
];
