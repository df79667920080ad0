import { describe, expect, it } from 'vitest';
import { plot, span } from '../../../src/ui/sheets/work/plot.ts';

describe('values on a picture', () => {
  it('lie between the edges of the frame, larger ones higher', () => {
    const frame = { left: 34, top: 14, width: 310, height: 60 };
    const places = plot([16, 21, 26], [29.1, 29.9, 28.3], { x: [16, 26], y: [28.3, 29.9] }, frame);
    expect(places[0]).toEqual({ x: 34, y: expect.closeTo(44, 9) as number });
    expect(places[1]).toEqual({ x: 189, y: 14 });
    expect(places[2]).toEqual({ x: 344, y: 74 });
  });

  it('have room on both sides, also where they are all the same', () => {
    expect(span([3, 7], 0.25)).toEqual([2, 8]);
    expect(span([7], 0.25)).toEqual([6.3, 7.7].map((v) => expect.closeTo(v, 9) as number));
    expect(span([0], 0)).toEqual([-0.5, 0.5]);
  });
});
