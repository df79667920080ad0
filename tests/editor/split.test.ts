import { describe, expect, it } from 'vitest';
import { axisOf, type Edited } from '../../src/editor/edit.ts';
import { changeBud, removeBud } from '../../src/editor/edits/bud.ts';
import { split } from '../../src/editor/edits/split.ts';
import { pathLengthM } from '../../src/geometry/path.ts';
import { placeBud, placeTree, radiusAtM } from '../../src/geometry/tree.ts';
import { distance, type Vec3 } from '../../src/geometry/vec.ts';
import { smallTree } from './smallTree.ts';

function made(edited: Edited) {
  if (!edited.ok) throw new Error(`refused: ${edited.reason}`);
  return edited;
}

const placed = (axes: typeof smallTree.axes) => placeTree({ axes }, { foot: [0, 0, 0], turnedDeg: 0 });
const tipOf = (axes: typeof smallTree.axes, id: string) => placed(axes).get(id)?.path.at(-1) as Vec3;

describe('a branch split in two', () => {
  it('moves nothing: what grew beyond the place grows where it did', () => {
    const { file, select } = made(split(smallTree, 'east', 0.2173));
    expect(file.axes).toHaveLength(smallTree.axes.length + 1);
    const outer = axisOf(file, select as string);
    expect(outer).toMatchObject({ parentId: 'east', atM: 0.2173, name: 'East limb, outer part' });
    expect(axisOf(file, 'lateral').parentId).toBe(outer.id);
    expect(axisOf(file, 'lateral').atM).toBeCloseTo(0.29 - 0.2173, 9);
    for (const id of ['lateral', 'shoot-1', 'shoot-2', 'west'])
      expect(distance(tipOf(file.axes, id), tipOf(smallTree.axes, id))).toBeLessThan(1e-9);
    expect(distance(tipOf(file.axes, outer.id), tipOf(smallTree.axes, 'east'))).toBeLessThan(1e-9);
    expect(pathLengthM(axisOf(file, 'east').path)).toBeCloseTo(0.2173, 9);
    const whole = placed(smallTree.axes).get('east');
    if (whole === undefined) throw new Error('no limb');
    expect(axisOf(file, 'east').tipDiameterM / 2).toBeCloseTo(radiusAtM(whole, 0.2173), 9);
  });

  it('shares its leaves and buds by where they are', () => {
    const { file, select } = made(split(smallTree, 'shoot-1', 0.15));
    const counts = ['shoot-1', select as string].map((id) => axisOf(file, id).foliage?.count ?? 0);
    expect(counts[0] ?? 0).toBeGreaterThan(0);
    expect((counts[0] ?? 0) + (counts[1] ?? 0)).toBe(11);
    const low = made(split(smallTree, 'lateral', 0.07));
    const bud = (axes: typeof smallTree.axes, id: string) => {
      const wood = placed(axes).get(id);
      const found = wood?.axis.buds[0];
      if (wood === undefined || found === undefined) throw new Error('no bud');
      return placeBud(wood, found).point;
    };
    expect(distance(bud(low.file.axes, low.select as string), bud(smallTree.axes, 'lateral'))).toBeLessThan(
      1e-9,
    );
  });

  it('is refused at its very ends', () => {
    expect(split(smallTree, 'west', 0.002)).toMatchObject({ ok: false });
    expect(split(smallTree, 'west', 0.9)).toMatchObject({ ok: false });
    expect(split(smallTree, 'west', Number.NaN)).toMatchObject({ ok: false });
  });
});

describe('a bud', () => {
  it('is moved along and round its branch, never beyond it, and rubbed off', () => {
    const { file } = made(changeBud(smallTree, 'lateral-b1', { atM: 0.21, aroundDeg: 77 }));
    expect(axisOf(file, 'lateral').buds).toEqual([{ id: 'lateral-b1', atM: 0.21, aroundDeg: 77, pin: null }]);
    expect(changeBud(smallTree, 'lateral-b1', { atM: 0.4 })).toMatchObject({ ok: false });
    expect(changeBud(smallTree, 'lateral-b1', { aroundDeg: 400 })).toMatchObject({ ok: false });
    expect(axisOf(made(removeBud(smallTree, 'lateral-b1')).file, 'lateral').buds).toEqual([]);
  });
});
