import { describe, expect, it } from 'vitest';
import { numberMembers, ownersLeft, ownersOf } from '../../src/growth/owners.ts';
import { pottedFig } from './figTree.ts';

const none = new Set<string>();

describe('numberMembers', () => {
  it('keeps every number, whatever is gone', () => {
    const whole = numberMembers(pottedFig(), none);
    const cut = numberMembers(pottedFig(), new Set(['limb-2', 'limb-3-b1']));
    const numbers = (members: typeof whole) =>
      members.map((m) => [m.owner, m.parent, m.bud?.id ?? m.axis.id]);
    expect(numbers(cut)).toEqual(numbers(whole));
    expect(whole.map((m) => m.owner)).toEqual(whole.map((_, i) => i + 1));
  });

  it('takes what grew from a branch with it', () => {
    const members = numberMembers(pottedFig(), new Set(['limb-2']));
    const gone = members.filter((m) => m.gone);
    // The limb, 3 laterals, 4 buds of its own and 3 on each lateral.
    expect(gone).toHaveLength(1 + 3 + 4 + 9);
    expect(gone.every((m) => m.axis.id.startsWith('limb-2'))).toBe(true);
  });

  it("grows no bud on dead wood and none in the axils of this season's leaves", () => {
    const tree = pottedFig();
    const axes = tree.axes.map((a) => {
      if (a.id === 'limb-1') return { ...a, condition: 'dead' as const };
      if (a.id === 'limb-4-lateral-2')
        return { ...a, foliage: { count: 5, midribM: 0.17, source: 'measured' as const } };
      return a;
    });
    const buds = numberMembers({ axes }, none).filter((m) => m.bud !== null);
    expect(buds.some((m) => m.axis.id === 'limb-1' || m.axis.id === 'limb-4-lateral-2')).toBe(false);
    expect(buds).toHaveLength(52 - 4 - 3);
  });

  it('refuses an id used twice', () => {
    const [trunk, limb] = pottedFig().axes;
    if (trunk === undefined || limb === undefined) throw new Error('the test tree has a trunk and limbs');
    const buds = limb.buds.map((bud) => ({ ...bud, id: 'trunk' }));
    expect(() => numberMembers({ axes: [trunk, { ...limb, buds }] }, none)).toThrow('got trunk twice');
  });
});

describe('ownersLeft', () => {
  const owners = ownersOf(numberMembers(pottedFig(), new Set(['limb-1'])), new Set());
  const numberOf = (id: string) => owners.findIndex((owner) => owner?.id === id);

  it('always keeps the surroundings, and nothing that was gone before', () => {
    const left = ownersLeft(owners, none);
    expect(left[0]).toBe(1);
    expect(left.reduce((a, b) => a + b, 0)).toBe(owners.filter((o) => o !== null).length + 1);
  });

  it('drops an owner when the wood it grew from goes', () => {
    const left = ownersLeft(owners, new Set(['limb-2-lateral-3', 'limb-3-b2', 'nothing-of-that-name']));
    for (const id of ['limb-2-lateral-3', 'limb-2-lateral-3-b1', 'limb-3-b2'])
      expect(left[numberOf(id)]).toBe(0);
    for (const id of ['limb-2', 'limb-2-lateral-2-b1', 'limb-3-b3']) expect(left[numberOf(id)]).toBe(1);
  });
});
