/**
 * The one colour scale for light, from dark blue (shade) to straw yellow (open sky), on the stage, in tables
 * and in print. Each class of light takes a quarter of the colours, so that the colours differ most where
 * the decision lies; the legend carries the figures.
 */
import { cividisCss } from './cividis.ts';
import { contrastOf, type LinearRgb, linearRgbOf } from './srgb.ts';

/** Shares of open sky at which the meaning of light changes, rising, each above 0 and below 1. */
export interface LightThresholds {
  /** Below it a shoot sits in deep shade. */
  readonly deepShade: number;
  /** Below it a shoot is not expected to set fruit. */
  readonly fruitingLight: number;
  /** Above it more light adds little to a leaf. */
  readonly saturation: number;
}

/** One step of the legend. */
export interface LightClass {
  readonly name: string;
  /** Shares of open sky it holds: `from` included, `to` not (the last holds all above). */
  readonly from: number;
  readonly to: number;
  /** Colour as CSS hex, and the better of black and white to write on it. */
  readonly css: string;
  readonly inkCss: string;
}

export interface LightScale {
  readonly thresholds: LightThresholds;
  /** Four, from dark to light. */
  readonly classes: readonly LightClass[];
  /** Place of a share on a legend bar, 0 to 1: a quarter for each class, straight within it. */
  position(share: number): number;
  /** The class a share falls in. */
  classOf(share: number): LightClass;
  /** Colour of a share as CSS hex, for print, tables and legends. */
  css(share: number): string;
  /** Colour of a share for the stage. */
  linearRgb(share: number): LinearRgb;
}

const classNames = ['deep shade', 'below fruiting light', 'fruiting light', 'as much as leaves can use'];

/** Every colour of the map is asked for again and again, by each leaf after each answer. */
const knownLinear = new Map<string, LinearRgb>();

function knownLinearRgb(css: string): LinearRgb {
  const known = knownLinear.get(css) ?? linearRgbOf(css);
  knownLinear.set(css, known);
  return known;
}

function checkThresholds({ deepShade, fruitingLight, saturation }: LightThresholds): void {
  if (0 < deepShade && deepShade < fruitingLight && fruitingLight < saturation && saturation < 1) return;
  const got = `${deepShade}, ${fruitingLight}, ${saturation}`;
  throw new Error(`makeLightScale: thresholds rise from above 0 to below 1, got ${got}`);
}

function makeClasses(limits: readonly number[]): LightClass[] {
  return classNames.map((name, i) => {
    const css = cividisCss((i + 0.5) / classNames.length);
    const inkCss = contrastOf(css, '#ffffff') > contrastOf(css, '#000000') ? '#ffffff' : '#000000';
    return { name, from: limits[i] as number, to: limits[i + 1] as number, css, inkCss };
  });
}

/**
 * The scale for the thresholds in use.
 * @param steps 'smooth': every share its own colour. 'classes': one colour a class, for bright sun and print.
 */
export function makeLightScale(
  thresholds: LightThresholds,
  steps: 'smooth' | 'classes' = 'smooth',
): LightScale {
  checkThresholds(thresholds);
  const limits = [0, thresholds.deepShade, thresholds.fruitingLight, thresholds.saturation, 1];
  const classes = makeClasses(limits);

  const indexOf = (share: number): number => {
    if (Number.isNaN(share)) throw new Error('makeLightScale: a share of open sky is a number, got NaN');
    return Math.max(
      0,
      classes.findLastIndex((c) => share >= c.from),
    );
  };
  const classOf = (share: number): LightClass => classes[indexOf(share)] as LightClass;
  const position = (share: number): number => {
    const i = indexOf(share);
    const { from, to } = classes[i] as LightClass;
    const within = Math.min(1, Math.max(0, (share - from) / (to - from)));
    return (i + within) / classes.length;
  };
  const css = (share: number): string =>
    steps === 'classes' ? classOf(share).css : cividisCss(position(share));
  return { thresholds, classes, position, classOf, css, linearRgb: (share) => knownLinearRgb(css(share)) };
}
