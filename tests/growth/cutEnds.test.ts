import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/vec.ts';
import { cutEndId, withCutEnds } from '../../src/growth/cutEnds.ts';
import { growCanopy } from '../../src/growth/growCanopy.ts';
import { ownersLeft } from '../../src/growth/owners.ts';
import { figValues } from '../../src/species/fig.ts';
import { pottedFig } from './figTree.ts';

const canopy = growCanopy({
  tree: pottedFig(),
  stance: { foot: [0.3, 0.2, -0.7], turnedDeg: 31 },
  values: figValues({}),
  heatGdd8: 620,
  seed: 9,
  gone: new Set(),
});
const tip = { axisId: 'limb-2-lateral-1', atM: 0.187 };
const lower = { axisId: 'limb-2-lateral-1', atM: 0.081 };
const woodM = (of: typeof canopy, keep: ArrayLike<number>): number =>
  of.wood.reduce((sum, { owner, from, to }) => sum + (keep[owner] === 1 ? distance(from, to) : 0), 0);

describe('withCutEnds', () => {
  it('changes nothing but owners while all stands', () => {
    const split = withCutEnds(canopy, [tip, lower]);
    const keep = ownersLeft(split.owners, new Set());
    expect(woodM(split, keep)).toBeCloseTo(woodM(canopy, keep), 12);
    expect(split.owners.slice(0, canopy.owners.length)).toEqual(canopy.owners);
    expect(split.owners).toHaveLength(canopy.owners.length + 2);
    expect(split.leaves.map(({ bladeFrom }) => bladeFrom)).toEqual(
      canopy.leaves.map(({ bladeFrom }) => bladeFrom),
    );
  });

  it('takes the wood beyond the cut and no more, as thick there as it was', () => {
    const split = withCutEnds(canopy, [lower, tip]);
    const whole = woodM(split, ownersLeft(split.owners, new Set()));
    const takenBy = (end: typeof tip): number =>
      whole - woodM(split, ownersLeft(split.owners, new Set([cutEndId(end)])));
    expect(takenBy(tip)).toBeCloseTo(0.23 - 0.187, 9);
    expect(takenBy(lower)).toBeCloseTo(0.23 - 0.081, 9);
    const end = split.wood.find(({ owner }) => split.owners[owner]?.id === cutEndId(lower));
    expect(end?.fromRadiusM).toBeCloseTo((0.012 + ((0.008 - 0.012) * 0.081) / 0.23) / 2, 12);
  });

  it('goes with the axis it ends', () => {
    const split = withCutEnds(canopy, [tip]);
    const keep = ownersLeft(split.owners, new Set(['limb-2']));
    expect(keep[split.owners.findIndex((owner) => owner?.id === cutEndId(tip))]).toBe(0);
  });

  it('leaves alone what it cannot find', () => {
    expect(withCutEnds(canopy, [{ axisId: 'nowhere', atM: 0.1 }]).owners).toEqual(canopy.owners);
  });
});
