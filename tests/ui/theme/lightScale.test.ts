import { describe, expect, it } from 'vitest';
import { cividisCss, cividisSize } from '../../../src/ui/theme/cividis.ts';
import { makeLightScale } from '../../../src/ui/theme/lightScale.ts';
import { contrastOf, lightnessOf } from '../../../src/ui/theme/srgb.ts';

const thresholds = { deepShade: 0.13, fruitingLight: 0.27, saturation: 0.44 };
const scale = makeLightScale(thresholds);
/** Colours are whole bytes: two neighbours may come out in the wrong order by this much L*. */
const byteStep = 0.05;

describe('the colour map', () => {
  it('grows lighter from each of its colours to the next', () => {
    let last = -1;
    for (let i = 0; i < cividisSize; i++) {
      const lightness = lightnessOf(cividisCss(i / (cividisSize - 1)));
      expect(lightness, `colour ${i}`).toBeGreaterThan(last - byteStep);
      last = lightness;
    }
  });

  it('runs from dark blue to straw yellow and stays there outside', () => {
    expect(cividisSize).toBe(256);
    expect(cividisCss(-3)).toBe('#00224e');
    expect(cividisCss(1.7)).toBe('#fee838');
    expect(() => cividisCss(Number.NaN)).toThrow('got NaN');
  });
});

describe('makeLightScale', () => {
  it('cuts the classes at the thresholds', () => {
    expect(scale.classes.map((c) => [c.from, c.to])).toEqual([
      [0, 0.13],
      [0.13, 0.27],
      [0.27, 0.44],
      [0.44, 1],
    ]);
    expect(scale.classOf(0.1299).name).toBe('deep shade');
    expect(scale.classOf(0.13).name).toBe('below fruiting light');
    expect(scale.classOf(1.06)).toBe(scale.classes[3]);
    expect(scale.classOf(-0.01)).toBe(scale.classes[0]);
  });

  it('gives neighbouring classes colours at least 10 apart in L*, and legible ink', () => {
    const lightness = scale.classes.map((c) => lightnessOf(c.css));
    for (let i = 1; i < lightness.length; i++) {
      expect((lightness[i] as number) - (lightness[i - 1] as number)).toBeGreaterThanOrEqual(10);
    }
    for (const c of scale.classes) expect(contrastOf(c.css, c.inkCss), c.name).toBeGreaterThanOrEqual(4.5);
  });

  it('never gets darker with more light', () => {
    let last = -1;
    for (let share = 0; share <= 1; share += 0.0037) {
      const lightness = lightnessOf(scale.css(share));
      expect(lightness).toBeGreaterThanOrEqual(last - byteStep);
      last = lightness;
    }
  });

  it('gives each class a quarter of the legend, with no jump at a threshold', () => {
    expect(scale.position(0)).toBe(0);
    expect(scale.position(0.065)).toBeCloseTo(0.125, 12);
    expect(scale.position(0.27)).toBeCloseTo(0.5, 12);
    expect(scale.position(0.2699999)).toBeCloseTo(0.5, 5);
    expect(scale.position(1.3)).toBe(1);
  });

  it('keeps to one colour a class when asked to', () => {
    const stepped = makeLightScale(thresholds, 'classes');
    expect(stepped.css(0.14)).toBe(stepped.css(0.26));
    expect(stepped.css(0.26)).not.toBe(stepped.css(0.28));
    expect(scale.css(0.14)).not.toBe(scale.css(0.26));
  });

  it('refuses thresholds that do not rise and shares that are no number', () => {
    expect(() => makeLightScale({ ...thresholds, deepShade: 0.3 })).toThrow('got 0.3, 0.27, 0.44');
    expect(() => makeLightScale({ ...thresholds, saturation: Number.NaN })).toThrow('NaN');
    expect(() => scale.css(Number.NaN)).toThrow('got NaN');
  });
});
