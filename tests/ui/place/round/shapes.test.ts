import { describe, expect, it } from 'vitest';
import type { Surrounding } from '../../../../src/document/treeFile.ts';
import {
  areaM2,
  gripsOf,
  movedBy,
  nearest,
  outline,
  type Spot,
  whereFrom,
} from '../../../../src/ui/sheets/place/round/shapes.ts';

const wall: Extract<Surrounding, { kind: 'wall' }> = {
  kind: 'wall',
  name: 'Yard wall',
  from: [-1.3, 2.1],
  to: [2.7, 5.1],
  heightM: 1.9,
  thicknessM: 0.3,
  reflectance: 0.35,
};
const box: Extract<Surrounding, { kind: 'box' }> = {
  kind: 'box',
  name: 'Barn',
  centre: [3.7, -1.1],
  sizeM: [4.2, 2.6, 3.1],
  turnedDeg: 30,
  reflectance: 0.2,
};
const crown: Extract<Surrounding, { kind: 'crown' }> = {
  kind: 'crown',
  name: 'Pear',
  centre: [-4.1, 0.7],
  centreHeightM: 3.3,
  halfSizeM: [1.7, 1.3, 2.1],
  leafAreaDensityM2M3: 1.1,
};

const round = (spots: readonly Spot[]) => spots.map((spot) => spot.map((m) => Math.round(m * 1e6) / 1e6));

describe('a thing seen from above', () => {
  it('covers its length times its thickness, or its ellipse', () => {
    expect(areaM2(outline(wall))).toBeCloseTo(5 * 0.3, 9);
    expect(areaM2(outline(box))).toBeCloseTo(4.2 * 2.6, 9);
    // A polygon of 48 corners within the ellipse has 48/2π sin(2π/48) of its area.
    expect(areaM2(outline(crown)) / (Math.PI * 1.7 * 1.3)).toBeCloseTo(0.99715, 4);
  });

  it('lies where the light meets it: a block turned clockwise swings its east side to the south', () => {
    const [sw, se] = outline({ ...box, centre: [0, 0], turnedDeg: 90 });
    expect(round([sw as Spot, se as Spot])).toEqual([
      [-1.3, 2.1],
      [-1.3, -2.1],
    ]);
  });

  it.each([wall, box, crown])('is moved whole: $name', (thing) => {
    const moved = outline(movedBy(thing, [0.35, -1.25]));
    const expected = outline(thing).map(([e, n]): Spot => [e + 0.35, n - 1.25]);
    expect(round(moved)).toEqual(round(expected));
  });

  it('cannot be moved off the map', () => {
    const far = movedBy(wall, [1000, -1000]);
    expect(far).toMatchObject({ from: [100, -100], to: [100, -100] });
  });

  it.each([wall, box, crown])('stays as it is when a knob is let go where it was taken: $name', (thing) => {
    for (const grip of gripsOf(thing, 0.8)) {
      expect(round(outline(grip.to(grip.at)))).toEqual(round(outline(thing)));
    }
  });

  it('follows its knobs', () => {
    const [corner, turn] = gripsOf({ ...box, turnedDeg: 0 }, 0.8);
    expect(corner?.to([4.7, 0.9])).toMatchObject({ sizeM: [2, 4, 3.1] });
    expect(turn?.to([6.7, -1.1])).toMatchObject({ turnedDeg: 90 });
    expect(gripsOf(crown, 1)[1]?.to([9, 3.2])).toMatchObject({ halfSizeM: [1.7, 2.5, 2.1] });
    expect(gripsOf(wall, 1)[0]?.to([0.5, -0.25])).toMatchObject({ from: [0.5, -0.25], to: [2.7, 5.1] });
  });

  it('is told by its nearest point', () => {
    expect(round([nearest(outline({ ...wall, from: [-3, 2], to: [3, 2] }), [0.4, 0])])).toEqual([
      [0.4, 1.85],
    ]);
    expect(whereFrom({ ...wall, from: [-3, 2], to: [3, 2] }, [0.4, 0], 'metric')).toBe('1.85 m to the north');
    expect(whereFrom(crown, [0, 0.7], 'us')).toBe('7 ft 10 in to the west');
  });
});
