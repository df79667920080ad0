/** How the light spreads over the shoots, and how it falls off from the top of the crown to its foot. */
import { metresPer, type Units } from '../geometry/measure.ts';

/** A shoot, as far as its light is asked for. */
interface Lit {
  readonly id: string;
  readonly lightFraction: number;
}

/** Shoots between two shares of open sky or two heights in metres: `from` included, `to` not. */
export interface Band<Row> {
  readonly from: number;
  readonly to: number;
  readonly rows: readonly Row[];
}

/** Width of a step, as a share of open sky. */
const stepShare = 0.1;

/** Tenths of open sky from none up to the brightest shoot's; more light than open sky counts in the last tenth. */
export function spreadByLight<Row extends Lit>(rows: readonly Row[]): readonly Band<Row>[] {
  const placeOf = ({ lightFraction }: Lit): number =>
    Math.min(9, Math.max(0, Math.floor(lightFraction / stepShare + 1e-9)));
  const count = Math.max(-1, ...rows.map(placeOf)) + 1;
  return Array.from({ length: count }, (_, i) => ({
    from: i / 10,
    to: i === 9 ? Number.POSITIVE_INFINITY : (i + 1) / 10,
    rows: rows.filter((row) => placeOf(row) === i),
  }));
}

/** Heights of a band that read well, in the units of the reader. */
const bandSteps = {
  metric: { unit: 'm', of: [0.1, 0.2, 0.5, 1, 2, 5] },
  us: { unit: 'ft', of: [0.5, 1, 2, 5, 10, 20] },
} as const;
const mostBands = 8;

/** Bands of equal height from the highest down, those without a shoot between them included; at most eight. */
export function spreadByHeight<Row extends Lit>(
  rows: readonly Row[],
  heightOf: ReadonlyMap<string, number>,
  units: Units,
): readonly Band<Row>[] {
  const placed = rows.flatMap((row) => {
    const heightM = heightOf.get(row.id);
    return heightM === undefined ? [] : [{ row, heightM }];
  });
  if (placed.length === 0) return [];
  const heights = placed.map(({ heightM }) => heightM);
  const { unit, of } = bandSteps[units];
  const stepsM = of.map((step) => step * metresPer[unit]);
  const placeIn = (heightM: number, stepM: number): number => Math.floor(heightM / stepM + 1e-9);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const stepM = stepsM.find((m) => placeIn(high, m) - placeIn(low, m) < mostBands) ?? stepsM.at(-1);
  const [first, last] = [placeIn(low, stepM), placeIn(high, stepM)];
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const place = last - i;
    return {
      from: place * stepM,
      to: (place + 1) * stepM,
      rows: placed.filter(({ heightM }) => placeIn(heightM, stepM) === place).map(({ row }) => row),
    };
  });
}

/** Mean share of open sky; null without shoots. */
export const meanLight = (rows: readonly Lit[]): number | null =>
  rows.length === 0 ? null : rows.reduce((sum, row) => sum + row.lightFraction, 0) / rows.length;
