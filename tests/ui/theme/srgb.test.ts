import { describe, expect, it } from 'vitest';
import { contrastOf, lightnessOf, linearRgbOf, mixRgb } from '../../../src/ui/theme/srgb.ts';

describe('sRGB', () => {
  it('turns to linear light channel by channel', () => {
    const [red, green, blue] = linearRgbOf('#ff8000');
    expect(red).toBe(1);
    // IEC 61966-2-1: 128/255 is 0.2158605 in linear light.
    expect(green).toBeCloseTo(0.2158605, 6);
    expect(blue).toBe(0);
  });

  it('knows the lightness of greys and the contrast of black and white', () => {
    expect(lightnessOf('#000000')).toBe(0);
    expect(lightnessOf('#ffffff')).toBeCloseTo(100, 9);
    // CIE: L* of 18.42 % luminance is 50; #777777 has 18.45 %.
    expect(lightnessOf('#777777')).toBeCloseTo(50.03, 1);
    expect(contrastOf('#ffffff', '#000000')).toBeCloseTo(21, 9);
    expect(contrastOf('#767676', '#ffffff')).toBeGreaterThan(4.5);
    expect(contrastOf('#777777', '#ffffff')).toBeLessThan(4.5);
  });

  it('mixes as light does', () => {
    const mixed = mixRgb([0.2, 0.4, 1], [1, 0, 0], 0.25);
    [0.4, 0.3, 0.75].forEach((channel, i) => expect(mixed[i]).toBeCloseTo(channel, 12));
  });

  it('refuses colours it cannot read', () => {
    expect(() => linearRgbOf('teal')).toThrow('got teal');
  });
});
