import { describe, expect, it } from 'vitest';
import { isInside, outlineBox } from '../../../src/geometry/outline.ts';
import { makeOutlineMask, maskBorder, maskInside, maskSide } from '../../../src/light/trace/outlineMask.ts';
import { lobed, stream } from './scene.ts';

describe('an outline mask', () => {
  it('tells inside and outside as the outline does, and leaves only a rim to it (seed 51)', () => {
    const mask = makeOutlineMask(lobed);
    const { minU, maxU, minV, maxV } = outlineBox(lobed);
    const draw = stream(51);
    let [border, wrong] = [0, 0];
    for (let n = 0; n < 20_000; n++) {
      const [u, v] = [minU + draw() * (maxU - minU), minV + draw() * (maxV - minV)];
      const [i, j] = [Math.floor((u - mask.minU) * mask.scaleU), Math.floor((v - mask.minV) * mask.scaleV)];
      const state = mask.texel[j * maskSide + i];
      if (state === maskBorder) border++;
      else if ((state === maskInside) !== isInside(lobed, u, v)) wrong++;
    }
    expect(wrong).toBe(0);
    expect(border / 20_000).toBeLessThan(0.15);
  });

  it('of an outline without area covers nothing', () => {
    const mask = makeOutlineMask([
      [0, 0],
      [1, 0],
      [2, 0],
    ]);
    expect(mask.scaleU).toBe(0);
    expect(mask.texel.every((state) => state === 0)).toBe(true);
  });
});
