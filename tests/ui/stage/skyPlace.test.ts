import { describe, expect, it } from 'vitest';
import { nodesOf, pointOfNode, skyPlaceIn } from '../../../src/ui/stage/skyPlace.ts';
import { smallCanopy } from '../scene/smallCanopy.ts';

const node = (owner: number, at: number, heightM: number) => ({
  owner,
  node: at,
  point: [0.2, heightM, -0.4] as const,
  atM: 0,
});
const shoot = (owner: number, id: string) => ({
  owner,
  id,
  name: id,
  path: [],
  lengthM: 0.4,
  baseDiameterM: 0.01,
  vigour: 1,
  blindNodes: 0,
  leafAreaM2: 0.1,
});
const canopy = {
  ...smallCanopy,
  nodes: [node(3, 1, 1.1), node(3, 2, 1.3), node(3, 3, 1.5), node(4, 1, 0.8)],
  shoots: [shoot(3, 'shoot'), shoot(4, 'bud-7')],
};

describe('the node whose sky is looked at', () => {
  it('is the middle one of the darkest shoot when nothing was chosen', () => {
    expect(skyPlaceIn(canopy, null, null, 'shoot')).toEqual({ shootId: 'shoot', node: 2 });
  });

  it('follows the selection, unless a branch without leaves is selected', () => {
    expect(skyPlaceIn(canopy, null, 'bud-7', 'shoot')).toEqual({ shootId: 'bud-7', node: 1 });
    expect(skyPlaceIn(canopy, null, 'limb', 'shoot')).toEqual({ shootId: 'shoot', node: 2 });
  });

  it('is the chosen one while its shoot is selected or none is', () => {
    const chosen = { shootId: 'shoot', node: 3 };
    expect(skyPlaceIn(canopy, chosen, 'shoot', 'bud-7')).toEqual(chosen);
    expect(skyPlaceIn(canopy, chosen, null, 'bud-7')).toEqual(chosen);
    expect(skyPlaceIn(canopy, chosen, 'bud-7', 'shoot')).toEqual({ shootId: 'bud-7', node: 1 });
  });

  it('falls back when the chosen node or shoot is no longer there', () => {
    expect(skyPlaceIn(canopy, { shootId: 'shoot', node: 9 }, null, 'bud-7')).toEqual({
      shootId: 'shoot',
      node: 2,
    });
    expect(skyPlaceIn(canopy, { shootId: 'gone', node: 1 }, null, 'bud-7')).toEqual({
      shootId: 'bud-7',
      node: 1,
    });
  });

  it('has its place in the canopy', () => {
    expect(nodesOf(canopy, 'shoot')).toEqual([1, 2, 3]);
    expect(pointOfNode(canopy, { shootId: 'shoot', node: 3 })).toEqual([0.2, 1.5, -0.4]);
    expect(pointOfNode(canopy, { shootId: 'shoot', node: 4 })).toBeNull();
  });
});
