import { describe, expect, it } from 'vitest';
import { changeSetting } from '../../src/editor/edits/setting.ts';
import { figParameters } from '../../src/species/fig.ts';
import { smallTree } from './smallTree.ts';

describe('a figure of the species set for one tree', () => {
  const set = (value: number | null, file = smallTree) => changeSetting(file, 'fruitHalfAtFraction', value);

  it('stands in the settings of the file, and the file before is as it was', () => {
    const before = JSON.stringify(smallTree);
    const edited = set(0.22);
    expect(edited).toMatchObject({ ok: true, said: expect.stringContaining('Fruiting light') });
    expect(edited.ok && edited.file.settings).toEqual({ ...smallTree.settings, fruitHalfAtFraction: 0.22 });
    expect(JSON.stringify(smallTree)).toBe(before);
  });

  it('leaves the settings when the published figure is brought back, or typed', () => {
    const edited = set(0.22);
    if (!edited.ok) throw new Error(edited.reason);
    for (const value of [null, figParameters.fruitHalfAtFraction.value]) {
      const back = set(value, edited.file);
      expect(back.ok && back.file.settings).toEqual(smallTree.settings);
    }
  });

  it('is refused outside its range, with the range in words', () => {
    for (const value of [0.17, 0.36, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(set(value)).toMatchObject({ ok: false, reason: expect.stringMatching(/0\.18 to 0\.35/) });
    }
  });

  it('is refused when all figs would set in no more light than half of them', () => {
    const edited = changeSetting(smallTree, 'fruitFullFromFraction', 0.35);
    if (!edited.ok) throw new Error(edited.reason);
    expect(set(0.35, edited.file)).toMatchObject({ ok: false, reason: expect.stringContaining('half') });
    expect(set(0.34, edited.file).ok).toBe(true);
  });

  it('throws for a figure that is not the grower’s to set', () => {
    const fixed = Object.entries(figParameters).find(([, figure]) => !figure.adjustable);
    if (fixed === undefined) throw new Error('every figure is adjustable');
    expect(() => changeSetting(smallTree, fixed[0] as keyof typeof figParameters, 1)).toThrow(
      /not the grower's/,
    );
  });
});
