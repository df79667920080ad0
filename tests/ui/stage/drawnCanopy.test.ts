import { describe, expect, it } from 'vitest';
import type { TreeFile } from '../../../src/document/treeFile.ts';
import { drawnCanopy } from '../../../src/ui/stage/drawnCanopy.ts';
import { smallTree } from '../../editor/smallTree.ts';

const withSite = (change: Partial<TreeFile['site']>): TreeFile => ({
  ...smallTree,
  site: { ...smallTree.site, ...change },
});

describe('the canopy that is drawn', () => {
  it('stays the same one while only walls, sky or frost change', () => {
    const before = drawnCanopy(smallTree, 'in full leaf');
    const wall = { kind: 'wall', name: 'Wall', heightM: 2, thicknessM: 0.2, reflectance: 0.3 } as const;
    const walled = withSite({ surroundings: [{ ...wall, from: [-2, 3], to: [2, 3] }] });
    expect(drawnCanopy(walled, 'in full leaf')).toBe(before);
    expect(drawnCanopy(withSite({ slope: { slopeDeg: 9, fallsToDeg: 77 } }), 'in full leaf')).toBe(before);
  });

  it('stays the same one while the grower marks what is to stay or to go', () => {
    const before = drawnCanopy(smallTree, 'in full leaf');
    const axes = smallTree.axes.map((axis) => ({
      ...axis,
      pin: 'keep' as const,
      buds: axis.buds.map((bud) => ({ ...bud, pin: 'remove' as const })),
    }));
    expect(drawnCanopy({ ...smallTree, axes }, 'in full leaf')).toBe(before);
  });

  it('is grown anew for other wood, another stand, or another warmth', () => {
    const before = drawnCanopy(smallTree, 'as sketched');
    const { axes, standing, site } = smallTree;
    const moved = { ...smallTree, standing: { ...standing, at: [0.7, -1.1] as [number, number] } };
    expect(drawnCanopy(moved, 'as sketched')).not.toEqual(before);
    expect(drawnCanopy({ ...smallTree, axes: axes.slice(0, -1) }, 'as sketched')).not.toEqual(before);
    const colder = site.climate.meanC.map((c) => c - 2.3) as typeof site.climate.meanC;
    const cold = withSite({ climate: { ...site.climate, meanC: colder } });
    expect(drawnCanopy(cold, 'as sketched')).not.toEqual(before);
    expect(drawnCanopy({ ...smallTree }, 'as sketched')).toEqual(before);
  });
});
