/** Values set out on a picture. */

export interface Plotted {
  readonly x: number;
  readonly y: number;
}

export type Span = readonly [low: number, high: number];

export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** From the least to the largest value, with room on both sides as a share of their distance; never empty. */
export function span(values: readonly number[], room: number): Span {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const aside = high > low ? room * (high - low) : Math.max(0.5, Math.abs(high) * 0.1);
  return [low - aside, high + aside];
}

/** Places in the frame, y upwards on paper. */
export function plot(
  xs: readonly number[],
  ys: readonly number[],
  { x, y }: { readonly x: Span; readonly y: Span },
  { left, top, width, height }: Frame,
): readonly Plotted[] {
  const share = (value: number, [low, high]: Span): number => (value - low) / (high - low);
  return xs.map((value, i) => ({
    x: left + share(value, x) * width,
    y: top + (1 - share(ys[i] as number, y)) * height,
  }));
}
