import { describe, expect, it } from 'vitest';
import { paperPicture, tagSize } from '../../../src/ui/sheets/work/paper/paperPlot.ts';

const wood = [
  { owner: 1, from: [0, 0.1, 0], to: [0, 1.1, 0], fromRadiusM: 0.03, toRadiusM: 0.02 },
  { owner: 2, from: [0, 1.1, 0], to: [0.5, 1.6, 0.2], fromRadiusM: 0.02, toRadiusM: 0.01 },
] as const;
const frame = { width: 300, height: 200, margin: 20 };

describe('the tree on paper', () => {
  it('is drawn to the scale that it tells, from the side where it is looked from', () => {
    const { wood: lines, perM, groundY } = paperPicture({ wood }, [], 180, frame);
    expect(perM).toBeCloseTo(160 / 1.6, 9);
    const [trunk, limb] = lines;
    expect((trunk?.y1 ?? 0) - (trunk?.y2 ?? 0)).toBeCloseTo(perM * 1, 9);
    // East is to the right for one who stands in the south, to the left for one in the north.
    expect((limb?.x2 ?? 0) - (limb?.x1 ?? 0)).toBeCloseTo(perM * 0.5, 9);
    expect((groundY ?? 0) - (trunk?.y1 ?? 0)).toBeCloseTo(perM * 0.1, 9);
    const north = paperPicture({ wood }, [], 0, frame).wood[1];
    expect((north?.x2 ?? 0) - (north?.x1 ?? 0)).toBeCloseTo(-perM * 0.5, 9);
    expect(trunk?.width).toBeCloseTo(0.05 * perM, 9);
  });

  it('stands in its pot, seen from the side alone', () => {
    const pot = { topDiameterM: 0.4, baseDiameterM: 0.3, heightM: 0.1 };
    const { pot: corners, wood: lines, perM, groundY } = paperPicture({ wood }, [], 180, frame, pot);
    const points = (corners ?? '').split(' ').map((corner) => corner.split(',').map(Number));
    const middle = lines[0]?.x1 ?? 0;
    const expected = [
      [middle - 0.2 * perM, lines[0]?.y1],
      [middle + 0.2 * perM, lines[0]?.y1],
      [middle + 0.15 * perM, groundY],
      [middle - 0.15 * perM, groundY],
    ];
    expected.flat().forEach((value, i) => expect(points.flat()[i]).toBeCloseTo(value ?? Number.NaN, 9));
    expect(paperPicture({ wood }, [], 'above', frame, pot).pot).toBeNull();
  });

  it('has north up from above', () => {
    const { wood: lines, groundY, perM } = paperPicture({ wood }, [], 'above', frame);
    const [, limb] = lines;
    // The limb reaches south: down on paper.
    expect((limb?.y2 ?? 0) - (limb?.y1 ?? 0)).toBeCloseTo(0.2 * perM, 9);
    expect((limb?.x2 ?? 0) - (limb?.x1 ?? 0)).toBeCloseTo(0.5 * perM, 9);
    expect(groundY).toBeNull();
  });

  it('has a tag for every cut, none over another, each with its line to the wood', () => {
    const marks = Array.from({ length: 14 }, (_, i) => ({
      text: `${i + 1}`,
      point: [0.03 * i, 1.1 + 0.02 * (i % 3), 0] as const,
    }));
    const { tags } = paperPicture({ wood }, marks, 180, frame);
    expect(tags.map(({ text }) => text)).toEqual(marks.map(({ text }) => text));
    for (const [i, a] of tags.entries()) {
      for (const b of tags.slice(i + 1)) {
        const apart =
          Math.abs(a.tagX - b.tagX) >= tagSize.width || Math.abs(a.tagY - b.tagY) >= tagSize.height;
        expect(apart, `${a.text} over ${b.text}`).toBe(true);
      }
    }
    expect(tags[2]?.x).toBeCloseTo((tags[0]?.x ?? 0) + 0.06 * 100, 9);
  });
});
