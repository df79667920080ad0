import { describe, expect, it } from 'vitest';
import { faintLeaves, type LeafLook, leafColours } from '../../../src/ui/scene/leafColours.ts';
import { makeLightScale } from '../../../src/ui/theme/lightScale.ts';
import { linearRgbOf, mixRgb } from '../../../src/ui/theme/srgb.ts';
import { smallCanopy } from './smallCanopy.ts';

const scale = makeLightScale({ deepShade: 0.13, fruitingLight: 0.27, saturation: 0.44 });
const look: LeafLook = {
  shares: Float32Array.from([0.3125, 0.0625, Number.NaN]),
  kind: 'open sky',
  stale: false,
  scale,
  selected: 0,
  hovered: 0,
  spotlit: null,
  fadeFrom: null,
  plant: '#7d9a6c',
  paper: '#f6f2e9',
  lit: '#e9c13c',
  shade: '#8f9298',
};

/** Leaves of the shoot at nodes 1 and 2, and of the bud. */
function coloursOf(changes: Partial<LeafLook>): number[][] {
  const flat = [...leafColours(smallCanopy, { ...look, ...changes })];
  return [flat.slice(0, 3), flat.slice(3, 6), flat.slice(6, 9)];
}

const expectColour = (got: number[] | undefined, want: readonly number[]): void =>
  want.forEach((channel, i) => expect(got?.[i]).toBeCloseTo(channel, 6));

describe('leafColours', () => {
  it('colours a leaf by its own share and leaves the unknown green', () => {
    const [first, second, ofBud] = coloursOf({});
    expectColour(first, scale.linearRgb(0.3125));
    expectColour(second, scale.linearRgb(0.0625));
    expectColour(ofBud, linearRgbOf('#7d9a6c'));
  });

  it('shows direct sun as such, half of it half-way', () => {
    const shares = Float32Array.from([1, 0, 0.5]);
    const [first, second, half] = coloursOf({ kind: 'direct sun', shares });
    expectColour(first, linearRgbOf(look.lit));
    expectColour(second, linearRgbOf(look.shade));
    expectColour(half, mixRgb(linearRgbOf(look.shade), linearRgbOf(look.lit), 0.5));
  });

  it('pales what is not looked for and lets one see through it', () => {
    const spotlit = Uint8Array.from([0, 0, 0, 1, 0]);
    const [first, , ofBud] = coloursOf({ spotlit });
    expectColour(first, scale.linearRgb(0.3125));
    expect(ofBud?.[2]).toBeGreaterThan(linearRgbOf('#7d9a6c')[2]);
    expect([...faintLeaves(smallCanopy, { ...look, spotlit })]).toEqual([0, 0, 1]);
    expect([...faintLeaves(smallCanopy, look)]).toEqual([0, 0, 0]);
  });

  it('lets leaves with light enough step back to find the dark ones, the limit itself included', () => {
    expect([...faintLeaves(smallCanopy, { ...look, fadeFrom: 0.27 })]).toEqual([1, 0, 0]);
    expect([...faintLeaves(smallCanopy, { ...look, fadeFrom: 0.3125 })]).toEqual([1, 0, 0]);
    expect([...faintLeaves(smallCanopy, { ...look, fadeFrom: 0.313 })]).toEqual([0, 0, 0]);
    // What is in the sun at a moment is no share of open sky.
    expect([...faintLeaves(smallCanopy, { ...look, fadeFrom: 0.27, kind: 'direct sun' })]).toEqual([0, 0, 0]);
    const [lit, dark] = coloursOf({ fadeFrom: 0.27 });
    expectColour(dark, scale.linearRgb(0.0625));
    expect(lit?.[2]).toBeGreaterThan(scale.linearRgb(0.3125)[2]);
  });

  it('greys old light, which stays as light as it was and can still be told', () => {
    const spread = (rgb: readonly number[] = []): number => Math.max(...rgb) - Math.min(...rgb);
    const luminance = ([red = 0, green = 0, blue = 0]: readonly number[] = []): number =>
      0.2126 * red + 0.7152 * green + 0.0722 * blue;
    const [lit, dark, unknown] = coloursOf({ stale: true });
    const [fresh, freshDark] = coloursOf({});
    expect(spread(lit)).toBeLessThan(0.35 * spread(fresh));
    expect(spread(dark)).toBeLessThan(0.35 * spread(freshDark));
    expect(luminance(lit)).toBeCloseTo(luminance(fresh), 6);
    expect(luminance(dark)).toBeLessThan(luminance(lit));
    expectColour(unknown, linearRgbOf('#7d9a6c'));
  });
  it('pales all but the selected shoot', () => {
    const [first, , ofBud] = coloursOf({ selected: 3 });
    expectColour(first, scale.linearRgb(0.3125));
    expect(ofBud?.[2]).toBeGreaterThan(linearRgbOf('#7d9a6c')[2]);
  });

  it('lightens the shoot under the pointer', () => {
    const [first] = coloursOf({ hovered: 3 });
    scale.linearRgb(0.3125).forEach((channel, i) => expect(first?.[i]).toBeGreaterThan(channel));
  });
});
