/** sRGB colours as CSS hex, and what the eye and the renderer make of them (IEC 61966-2-1:1999). */

/** Red, green and blue in linear light, 0 to 1. */
export type LinearRgb = readonly [red: number, green: number, blue: number];

/** One sRGB channel, 0 to 1, in linear light. */
const linearOf = (channel: number): number =>
  channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;

/** Linear light of a colour written #rrggbb. */
export function linearRgbOf(css: string): LinearRgb {
  if (!/^#[0-9a-f]{6}$/i.test(css)) throw new Error(`linearRgbOf: a colour is written #rrggbb, got ${css}`);
  const channel = (at: number): number => linearOf(Number.parseInt(css.slice(at, at + 2), 16) / 255);
  return [channel(1), channel(3), channel(5)];
}

/** Relative luminance of a colour, 0 black to 1 white. */
export function luminanceOf(css: string): number {
  const [red, green, blue] = linearRgbOf(css);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** CIE 1976 lightness L* of a colour, 0 to 100 (ISO/CIE 11664-4). */
export function lightnessOf(css: string): number {
  const y = luminanceOf(css);
  return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (24389 / 27) * y;
}

/** Contrast of two colours, 1 to 21 (WCAG 2.2). */
export function contrastOf(first: string, second: string): number {
  const [a, b] = [luminanceOf(first), luminanceOf(second)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** The colour `t` of the way from one to another, mixed as light. */
export const mixRgb = (from: LinearRgb, to: LinearRgb, t: number): LinearRgb => [
  from[0] + (to[0] - from[0]) * t,
  from[1] + (to[1] - from[1]) * t,
  from[2] + (to[2] - from[2]) * t,
];

/** The grey that is as light as a colour. */
export function greyOf([red, green, blue]: LinearRgb): LinearRgb {
  const luminance = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  return [luminance, luminance, luminance];
}

/** One channel of linear light, 0 to 1, as an sRGB byte. */
const byteOf = (channel: number): number =>
  Math.round(255 * (channel <= 0.0031308 ? channel * 12.92 : 1.055 * channel ** (1 / 2.4) - 0.055));

/** Red, green and blue as sRGB bytes, for pictures. */
export const srgbBytes = ([red, green, blue]: LinearRgb): [number, number, number] => [
  byteOf(red),
  byteOf(green),
  byteOf(blue),
];
