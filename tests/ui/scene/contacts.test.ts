import { describe, expect, it } from 'vitest';
import { contacts } from '../../../src/ui/scene/ContactShade.tsx';
import { smallTree } from '../../editor/smallTree.ts';

const pot = { topDiameterM: 0.47, baseDiameterM: 0.33, heightM: 0.41, soilBelowRimM: 0.04 };

describe('contacts', () => {
  it('lie on the soil round the trunk and on the ground round the pot, wherever it stands', () => {
    const [trunk, under] = contacts({
      ...smallTree,
      standing: { ...smallTree.standing, pot, at: [1.3, -0.7] },
    });
    expect(trunk?.at).toEqual([1.3, expect.closeTo(0.37, 12), 0.7]);
    expect(under?.at).toEqual([1.3, 0, 0.7]);
    expect(under?.radiusM).toBeGreaterThan(0.165);
    expect(trunk?.radiusM).toBeGreaterThan((smallTree.axes[0]?.baseDiameterM ?? 0) / 2);
  });

  it('are of the trunk alone in open ground', () => {
    const found = contacts({ ...smallTree, standing: { ...smallTree.standing, pot: null, at: [0.2, 0.5] } });
    expect(found.map(({ under, at }) => [under, at])).toEqual([['trunk', [0.2, 0, -0.5]]]);
  });
});
