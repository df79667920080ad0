import { describe, expect, it } from 'vitest';
import { type LeafLook, leafColours } from '../../../src/ui/scene/leafColours.ts';
import { makeLightScale } from '../../../src/ui/theme/lightScale.ts';
import { linearRgbOf } from '../../../src/ui/theme/srgb.ts';
import { smallCanopy } from './smallCanopy.ts';

const scale = makeLightScale({ deepShade: 0.13, fruitingLight: 0.27, saturation: 0.44 });
const look: LeafLook = {
  lightOf: new Map([['shoot', 0.31]]),
  nodeLight: [{ shootId: 'shoot', node: 2, share: 0.08 }],
  stale: false,
  scale,
  selected: 0,
  hovered: 0,
  plant: '#7d9a6c',
  paper: '#f6f2e9',
};

/** Leaves of the shoot at nodes 1 and 2, and of the bud. */
function coloursOf(changes: Partial<LeafLook>): number[][] {
  const flat = [...leafColours(smallCanopy, { ...look, ...changes })];
  return [flat.slice(0, 3), flat.slice(3, 6), flat.slice(6, 9)];
}

const expectColour = (got: number[] | undefined, want: readonly number[]): void =>
  want.forEach((channel, i) => expect(got?.[i]).toBeCloseTo(channel, 6));

describe('leafColours', () => {
  it('colours a leaf by its node, else by its shoot, and leaves the unknown green', () => {
    const [first, second, ofBud] = coloursOf({});
    expectColour(first, scale.linearRgb(0.31));
    expectColour(second, scale.linearRgb(0.08));
    expectColour(ofBud, linearRgbOf('#7d9a6c'));
  });

  it('shows no light by node for a shoot whose light is not known', () => {
    const [first, second] = coloursOf({ lightOf: new Map() });
    expectColour(second, first ?? []);
  });

  it('brings old light nearer to green, but leaves it to be seen', () => {
    const [first] = coloursOf({ stale: true });
    const [fresh, plant] = [scale.linearRgb(0.31), linearRgbOf('#7d9a6c')];
    const towards = ((first?.[2] ?? 0) - fresh[2]) / (plant[2] - fresh[2]);
    expect(towards).toBeGreaterThan(0.4);
    expect(towards).toBeLessThan(0.8);
  });

  it('pales all but the selected shoot', () => {
    const [first, , ofBud] = coloursOf({ selected: 3 });
    expectColour(first, scale.linearRgb(0.31));
    expect(ofBud?.[2]).toBeGreaterThan(linearRgbOf('#7d9a6c')[2]);
  });

  it('lightens the shoot under the pointer', () => {
    const [first] = coloursOf({ hovered: 3 });
    scale.linearRgb(0.31).forEach((channel, i) => expect(first?.[i]).toBeGreaterThan(channel));
  });
});
