import { describe, expect, it } from 'vitest';
import type { Axis } from '../../src/geometry/tree.ts';
import { findFaults } from '../../src/plan/faults.ts';
import { axis, bud, limb, stance, straight, tree, trunk, values } from './smallTree.ts';

const leaves = { count: 9, midribM: 0.16, source: 'measured' } as const;
const faultsOf = (...axes: readonly Axis[]) => findFaults(tree(trunk(), ...axes), stance, values);
const cutsOf = (...axes: readonly Axis[]) =>
  faultsOf(...axes).cuts.map(({ target, atM, reasons }) => [target, atM, ...reasons.map(({ rule }) => rule)]);

describe('sick wood', () => {
  it('goes in one cut for a whole dead branch', () => {
    const dead = { condition: 'dead', path: straight(0.4, 140, 20) } as const;
    const axes = [
      limb('east', 90),
      axis('a', 'east', { atM: 0.3, ...dead }),
      axis('b', 'a', { atM: 0.2, ...dead }),
    ];
    expect(cutsOf(...axes)).toEqual([['a', 0, 'dead']]);
  });

  it('is cut back to beyond the last live branch it carries', () => {
    const axes = [
      limb('east', 90, { condition: 'dead' }),
      axis('live', 'east', { atM: 0.31, path: straight(0.3, 150, 30) }),
    ];
    const thickness = 0.029 + ((0.014 - 0.029) * 0.31) / 0.83;
    const [cut] = faultsOf(...axes).cuts;
    expect(cut?.target).toBe('east');
    expect(cut?.atM).toBeCloseTo(0.31 + thickness, 6);
  });

  it('goes whole when diseased, live branches or not', () => {
    const axes = [limb('east', 90, { condition: 'diseased' }), axis('live', 'east', { atM: 0.31 })];
    expect(cutsOf(...axes)).toEqual([['east', 0, 'diseased']]);
  });

  it('is told, not cut, when it is the trunk', () => {
    const found = findFaults(tree(trunk({ condition: 'damaged' })), stance, values);
    expect(found.cuts).toEqual([]);
    expect(found.remarks.map(({ reason }) => reason.rule)).toEqual(['damaged']);
  });
});

describe('suckers', () => {
  it('go by kind and by origin low on the trunk, but no scaffold does', () => {
    const axes = [
      limb('east', 90),
      limb('low limb', 200, { atM: 0.17 }),
      axis('from-soil', 'trunk', { kind: 'sucker', path: straight(0.6, 30, 75), foliage: leaves }),
      axis('low', 'trunk', { kind: 'shoot', atM: 0.13, path: straight(0.2, 300, 40), foliage: leaves }),
      axis('high', 'trunk', { kind: 'shoot', atM: 0.55, path: straight(0.2, 300, 40), foliage: leaves }),
    ];
    expect(cutsOf(...axes)).toEqual([
      ['from-soil', 0, 'sucker'],
      ['low', 0, 'sucker'],
    ]);
  });

  it('stay when they are asked for, the thickest live one first, and that is told', () => {
    const sucker = (id: string, bearing: number, rest: Partial<Axis>) =>
      axis(id, 'trunk', { kind: 'sucker', path: straight(0.6, bearing, 75), ...rest });
    const axes = [
      limb('east', 90),
      sucker('thin', 30, { baseDiameterM: 0.011 }),
      sucker('thick', 150, { baseDiameterM: 0.019 }),
      sucker('thickest, dead', 270, { baseDiameterM: 0.023, condition: 'damaged' }),
    ];
    const of = tree(trunk(), ...axes);
    const kept = (suckersKept: number) => {
      const { cuts, remarks } = findFaults(of, stance, { ...values, suckersKept });
      return [cuts.map(({ target }) => target), remarks.map(({ target }) => target)];
    };
    expect(kept(0)).toEqual([['thickest, dead', 'thin', 'thick'], []]);
    expect(kept(1)).toEqual([['thickest, dead', 'thin'], ['thick']]);
    expect(kept(3)).toEqual([['thickest, dead'], ['thin', 'thick']]);
  });

  it('stay when the grower pinned them or a bud on them, and that is told', () => {
    const pinned = axis('s', 'trunk', { kind: 'sucker', path: straight(0.6, 30, 75), pin: 'keep' });
    const byBud = axis('t', 'trunk', {
      kind: 'sucker',
      path: straight(0.6, 210, 75),
      buds: [bud('t1', 0.4, 0, 'keep')],
    });
    const found = faultsOf(limb('east', 90), pinned, byBud);
    expect(found.cuts).toEqual([]);
    expect(found.overruled.map(({ target }) => target)).toEqual(['s', 't']);
  });
});

describe('crossing', () => {
  /** Two laterals of neighbouring limbs that pass each other at a distance between their lines. */
  const pair = (gapM: number, rest: Partial<Axis> = {}): Axis[] => [
    limb('east', 90, { path: straight(0.83, 90, 0) }),
    limb('north', 0, { path: straight(0.83, 0, 0) }),
    axis('a', 'east', { atM: 0.5, path: straight(0.9, 0, 0), ...rest }),
    axis('b', 'north', {
      atM: 0.5,
      path: [
        [0, 0, 0],
        [0, gapM, 0],
        [0.7, gapM, 0],
      ],
    }),
  ];

  it('flags two branches nearer than the limit and says by how much', () => {
    const [fault] = faultsOf(...pair(0.021)).cuts;
    const reason = fault?.reasons[0];
    if (reason?.rule !== 'crossing') throw new Error('no crossing found');
    expect(reason.gapM).toBeCloseTo(0.021, 3);
    // Both branches are 1.7 cm thick at the base and 0.9 cm at the tip.
    expect(reason.barkGapM).toBeLessThan(0.021 - 0.009);
    expect(reason.barkGapM).toBeGreaterThan(0.021 - 0.017);
    expect(reason.barkLimitM).toBeGreaterThanOrEqual(0.02);
    expect(reason.limitM).toBeGreaterThanOrEqual(0.03);
    expect(reason.overM).toBeGreaterThan(0.02);
    expect(reason.overM).toBeLessThan(0.12);
  });

  it('leaves two branches alone that keep their distance', () => {
    expect(faultsOf(...pair(0.061)).cuts).toEqual([]);
  });

  it('is not found in a long narrow fork that only slowly parts', () => {
    const axes = [
      limb('east', 90, { path: straight(0.83, 90, 20), baseDiameterM: 0.044, tipDiameterM: 0.042 }),
      axis('twin', 'east', { atM: 0.2, path: straight(0.6, 90, 29), baseDiameterM: 0.043 }),
    ];
    expect(faultsOf(...axes).remarks.map(({ reason }) => reason.rule)).toEqual(['narrow fork']);
    expect(faultsOf(...axes).cuts).toEqual([]);
  });

  it('takes one of the two and not both', () => {
    expect(faultsOf(...pair(0.021)).cuts).toHaveLength(1);
  });

  it('keeps the pinned one whatever its points', () => {
    expect(cutsOf(...pair(0.021, { pin: 'keep' }))).toEqual([['b', 0, 'crossing']]);
    expect(cutsOf(...pair(0.021, { pin: 'remove' }))).toEqual([['a', 0, 'pinned']]);
  });

  it('keeps the wood that the other grew from', () => {
    const back = axis('back', 'east', {
      atM: 0.2,
      path: [
        [0, 0, 0],
        [0.1, 0.2, 0.1],
        [0.42, 0.012, 0],
      ],
    });
    const found = cutsOf(limb('east', 90, { path: straight(0.83, 90, 0) }), back);
    expect(found).toEqual([['back', 0, 'crossing']]);
  });

  it('takes no notice of wood beside the fork that two branches share', () => {
    const axes = [
      limb('east', 90, { path: straight(0.83, 90, 0) }),
      axis('a', 'east', { atM: 0.4, path: straight(0.5, 150, 20) }),
      axis('b', 'east', { atM: 0.41, path: straight(0.5, 30, 20) }),
    ];
    expect(cutsOf(...axes)).toEqual([]);
  });
});

describe('inward growth and water sprouts', () => {
  it('takes a lateral that ends in the middle of the crown', () => {
    const axes = [
      limb('east', 90),
      limb('west', 270),
      axis('in', 'east', { atM: 0.6, path: straight(0.45, 265, 30) }),
      axis('out', 'west', { atM: 0.6, path: straight(0.45, 180, 30) }),
    ];
    expect(cutsOf(...axes)).toEqual([['in', 0, 'inward']]);
  });

  it('takes a steep, long shoot with long internodes from older wood', () => {
    const sprout = { kind: 'shoot', grownIn: 2026, atM: 0.5, path: straight(0.88, 90, 81) } as const;
    const vigorous = axis('up', 'east', { ...sprout, foliage: { ...leaves, count: 10 } });
    const crown = axis('crown', 'east', {
      ...sprout,
      path: straight(0.43, 90, 41),
      foliage: { ...leaves, count: 27 },
    });
    expect(cutsOf(limb('east', 90), vigorous, crown)).toEqual([['up', 0, 'water sprout']]);
    const ordinary = axis('up', 'east', { ...sprout, foliage: { ...leaves, count: 19 } });
    expect(cutsOf(limb('east', 90), ordinary)).toEqual([]);
  });

  it('leaves a steep shoot on young wood alone', () => {
    const young = axis('up', 'east', {
      kind: 'shoot',
      grownIn: 2026,
      atM: 0.5,
      path: straight(0.88, 90, 81),
    });
    expect(cutsOf(limb('east', 90, { grownIn: 2025 }), young)).toEqual([]);
  });
});

describe('narrow forks', () => {
  const forked = (angleDeg: number, rest: Partial<Axis> = {}): Axis[] => [
    limb('east', 90, { path: straight(0.83, 90, 20), baseDiameterM: 0.044, tipDiameterM: 0.042 }),
    axis('twin', 'east', { atM: 0.4, path: straight(0.7, 90, 20 + angleDeg), ...rest }),
  ];

  it('takes the weaker branch of a fork that is narrow beyond doubt', () => {
    expect(cutsOf(...forked(23))).toEqual([['twin', 0, 'narrow fork']]);
  });

  it('tells of a fork about as wide as the limit, and of a thick one, without a cut', () => {
    for (const axes of [forked(34), forked(23, { baseDiameterM: 0.0415, tipDiameterM: 0.03 })]) {
      const found = faultsOf(...axes);
      expect(found.cuts).toEqual([]);
      expect(found.remarks.map(({ target }) => target)).toEqual(['twin']);
    }
  });

  it('leaves a wide fork alone', () => {
    const found = faultsOf(...forked(48));
    expect([found.cuts, found.remarks]).toEqual([[], []]);
  });

  it('does not take a leader for a fork', () => {
    const leader = axis('leader', 'trunk', { atM: 0.62, path: straight(0.5, 30, 84) });
    expect(cutsOf(limb('east', 90), leader)).toEqual([]);
  });
});

it('drops a cut inside wood that another cut takes, and runs each rule on the tree the last one left', () => {
  const axes = [
    limb('east', 90, { path: straight(0.83, 90, 20), condition: 'diseased' }),
    axis('twin', 'east', { atM: 0.4, path: straight(0.7, 90, 42) }),
    axis('dead-one', 'east', { atM: 0.6, path: straight(0.2, 0, 20), condition: 'dead' }),
  ];
  const found = faultsOf(...axes);
  expect(found.cuts.map(({ target }) => target)).toEqual(['east']);
  expect(found.after.axes.map(({ id }) => id)).toEqual(['trunk']);
});
