import { describe, expect, it } from 'vitest';
import { placeBud, placeTree } from '../../src/geometry/tree.ts';
import { distance, dot, sub, type Vec3 } from '../../src/geometry/vec.ts';
import { growCanopy } from '../../src/growth/growCanopy.ts';
import { cautionsFor, cautionText } from '../../src/plan/cautions.ts';
import type { Place, Reason } from '../../src/plan/cut.ts';
import { placeOfBud, placeOfCut } from '../../src/plan/place.ts';
import { remarkText } from '../../src/plan/remarks.ts';
import { ruleContext } from '../../src/plan/ruleContext.ts';
import { ifKeptText, placeText, reasonText, whatText } from '../../src/plan/words.ts';
import { axis, bud, limb, stance, straight, tree, trunk, values } from './smallTree.ts';

const lateral2 = axis('x17', 'x3', {
  name: 'South-east limb, lateral 2',
  atM: 0.51,
  path: straight(0.44, 110, 25),
  buds: [bud('x17-b', 0.34, 0), bud('x17-c', 0.21, 90)],
});
const sketch = tree(trunk(), limb('x3', 135, { name: 'South-east limb' }), lateral2);
const context = ruleContext(sketch, stance, values);
const placedAxis = (id: string) => {
  const found = placeTree(sketch, stance).get(id);
  if (found === undefined) throw new Error(`no axis ${id}`);
  return context.placed.get(id) ?? found;
};
const house = { name: 'the house', bearingDeg: 0 };

describe('places', () => {
  it('of a bud names branch, distance, side and height, and never an id', () => {
    const place = placeOfBud(context, placedAxis('x17'), bud('x17-b', 0.34, 0));
    const text = placeText({ kind: 'rub off bud', atM: 0, place }, 'metric', house);
    expect(text).toBe(
      'Go to the south-east limb, lateral 2. 34 cm out from its fork, bud on the upper side, 93 cm above the soil. Seen from the house: left, at the back.',
    );
    expect(text).not.toContain('x17');
  });

  it('of a bud at the side names the wind it faces', () => {
    // Clockwise seen from the tip of wood that runs east-south-east: a quarter turn from the top is its north side.
    const place = placeOfBud(context, placedAxis('x17'), bud('x17-c', 0.21, 90));
    expect(place.face).toBe('north');
  });

  it('of a branch is where it sits on its parent', () => {
    const place = placeOfCut(context, placedAxis('x17'), 0);
    expect([place.branch, place.piece, place.forksFrom]).toEqual(['South-east limb', lateral2.name, 'Trunk']);
    expect(place.fromForkM).toBeCloseTo(0.51, 9);
    expect(placeText({ kind: 'remove', atM: 0, place }, 'us', null)).toBe(
      'Go to the south-east limb. The piece to take off sits 20 in out from its fork, on the north-east side, 31 in above the soil.',
    );
    expect(whatText({ kind: 'remove', atM: 0, place })).toBe('Take off the south-east limb, lateral 2');
  });

  it('of a shortened branch is along the branch itself', () => {
    const place = placeOfCut(context, placedAxis('x17'), 0.4);
    expect(place.branch).toBe('South-east limb, lateral 2');
    expect(whatText({ kind: 'tip', atM: 0.4, place })).toBe('Cut the tip of the south-east limb, lateral 2');
    expect(whatText({ kind: 'remove', atM: 0.4, place })).toBe('Shorten the south-east limb, lateral 2');
  });

  const at = (bearingDeg: number): string => {
    const place: Place = { ...placeOfCut(context, placedAxis('x17'), 0), bearingDeg };
    return placeText({ kind: 'remove', atM: 0, place }, 'metric', {
      name: 'the gate',
      bearingDeg: 200,
    }).slice(-60);
  };

  it('are told left and right, front and back, as seen by someone who looks at the trunk', () => {
    expect(at(200)).toContain('Seen from the gate: in the middle, at the front.');
    expect(at(20)).toContain('in the middle, at the back.');
    expect(at(110)).toContain('right, halfway back.');
    expect(at(290)).toContain('left, halfway back.');
    expect(at(335)).toContain('left, at the back.');
  });
});

describe('places on a turned tree', () => {
  // The trunk bears a bud on what was its east side in the sketch; the limb ran south-east.
  const upright = tree(trunk({ buds: [bud('t', 0.31, 90)] }), limb('x3', 135, { name: 'South-east limb' }), {
    ...lateral2,
    buds: [bud('x17-c', 0.21, 90)],
  });
  const turned = ruleContext(upright, { ...stance, turnedDeg: 90 }, values);
  const placeOf = (id: string, axisId: string): Place => {
    const placed = turned.placed.get(axisId);
    const found = placed?.axis.buds.find((one) => one.id === id);
    if (placed === undefined || found === undefined) throw new Error(`no bud ${id}`);
    return placeOfBud(turned, placed, found);
  };

  it('speak of the world as it stands, on upright wood too', () => {
    expect([placeOf('t', 'trunk').face, placeOf('x17-c', 'x17').face]).toEqual(['south', 'east']);
    expect(placeOf('t', 'trunk').bearingDeg).toBeCloseTo(180, 6);
  });

  it('say where a branch named after a side now is', () => {
    const place = placeOf('x17-c', 'x17');
    expect(placeText({ kind: 'rub off bud', atM: 0, place }, 'metric', house)).toContain(
      'lateral 2 (south-west side of the tree).',
    );
  });

  it('tell the side of the trunk from where the grower stands', () => {
    const text = (bearingDeg: number): string =>
      placeText(
        { kind: 'rub off bud', atM: 0, place: { ...placeOf('t', 'trunk'), bearingDeg } },
        'metric',
        house,
      );
    expect(text(180)).toContain('Seen from the house: on the far side.');
    expect(text(40)).toContain('on the side that faces you, to the left.');
    expect(text(275)).toContain('on the right side.');
  });

  it('tell no side of the very tip of the trunk', () => {
    const place = placeOfCut(turned, turned.trunk, 0.58);
    expect(placeText({ kind: 'tip', atM: 0.58, place }, 'metric', house)).toBe(
      'Go to the trunk. 58 cm up from the soil.',
    );
  });

  it('name the side where the shoot of the bud will grow', () => {
    const canopy = growCanopy({
      tree: upright,
      stance: { ...stance, turnedDeg: 90 },
      values,
      heatGdd8: 300,
      seed: 5,
      gone: new Set(),
    });
    for (const [id, axisId] of [
      ['t', 'trunk'],
      ['x17-c', 'x17'],
    ] as const) {
      const { path } = canopy.shoots.find((shoot) => shoot.id === id) ?? { path: [] };
      const placed = turned.placed.get(axisId);
      const found = placed?.axis.buds.find((one) => one.id === id);
      if (placed === undefined || found === undefined) throw new Error(`no bud ${id}`);
      const { point, outward } = placeBud(placed, found);
      expect(distance(path[0] as Vec3, point)).toBeLessThan(1e-9);
      expect(dot(sub(path[1] as Vec3, path[0] as Vec3), outward)).toBeGreaterThan(0);
    }
  });
});

describe('reasons and remarks', () => {
  const reasons: readonly Reason[] = [
    { rule: 'dead' },
    { rule: 'diseased' },
    { rule: 'damaged' },
    { rule: 'pinned' },
    { rule: 'below the fork', heightM: 0.21, forkM: 0.47 },
    { rule: 'sucker', originHeightM: 0.13, limitM: 0.2 },
    {
      rule: 'crossing',
      other: 'East limb',
      barkGapM: 0.012,
      barkLimitM: 0.02,
      gapM: 0.031,
      overM: 0.09,
      limitM: 0.039,
      keptFor: ['sound', 'thicker'],
    },
    { rule: 'inward', share: 0.21, limit: 0.33 },
    { rule: 'narrow fork', angleDeg: 27.3, limitDeg: 35 },
    {
      rule: 'water sprout',
      elevationDeg: 81.2,
      limitDeg: 70,
      lengthM: 0.88,
      limitM: 0.6,
      internodeM: 0.083,
      parentAgeYears: 3,
    },
    {
      rule: 'crowding',
      ownShare: 0.17,
      figsIfKept: 1.04,
      figsForOthers: 2.31,
      figsByShade: 2.31,
      figsWanted: 0.25,
    },
    { rule: 'limb full', limb: 'East limb', kept: 8, limit: 8 },
    { rule: 'pair', other: 'the next bud on East limb', gapM: 0.043, wantedM: 0.1 },
    { rule: 'tip', lengthM: 0.07, nodes: 1, firstCropFigsLost: 0.4, why: 'too high' },
  ];

  it('tell shade and the load of a pot apart', () => {
    const crowding = {
      rule: 'crowding',
      ownShare: 0.17,
      figsIfKept: 1,
      figsForOthers: 2.3,
      figsWanted: 0.25,
    } as const;
    expect(reasonText({ ...crowding, figsByShade: 2.3 }, 'metric')).toContain('shade away about 2.3 figs');
    expect(reasonText({ ...crowding, figsByShade: 1.1 }, 'metric')).toContain(
      'cost the others about 2.3 figs: 1.1 figs by its shade, 1.2 figs because the pot feeds only so many.',
    );
    expect(reasonText({ ...crowding, figsByShade: 0.01 }, 'metric')).toContain(
      'cost the others about 2.3 figs, because the pot feeds only so many.',
    );
  });

  it('give parts that add up to the whole as it is shown', () => {
    const crowding = { rule: 'crowding', ownShare: 0.2, figsIfKept: 1.64, figsWanted: 0.25 } as const;
    expect(reasonText({ ...crowding, figsForOthers: 1.29, figsByShade: 0.74 }, 'metric')).toContain(
      'cost the others about 1.3 figs: 0.7 figs by its shade, 0.6 figs because the pot feeds only so many.',
    );
    // 1.6 and 1.3 are shown: 0.3 are left over, though 1.64 less 1.29 is 0.35.
    const poor = { ...crowding, figsForOthers: 1.29, figsByShade: 1.29, figsWanted: 0.4 };
    expect(reasonText(poor, 'metric')).toContain('The 0.3 figs left over are too little');
  });

  it('say when what a shoot would leave over is too little to keep it for', () => {
    const crowding = {
      rule: 'crowding',
      ownShare: 0.4,
      figsIfKept: 1.4,
      figsByShade: 0,
      figsWanted: 0.25,
    } as const;
    const left = (figsForOthers: number) => reasonText({ ...crowding, figsForOthers }, 'metric');
    expect(left(1.22)).toContain('The 0.2 figs left over are too little to keep it for.');
    expect(left(1.1)).not.toContain('left over');
    expect(left(1.6)).not.toContain('left over');
  });

  it('tell the price of keeping a piece, with the shoots that fall below fruiting light', () => {
    const shoot = (n: number, figsLost: number) => {
      return { id: `s${n}`, name: `Shoot ${n} on Old arm`, share: 0.31, shareIfKept: 0.24, figsLost };
    };
    expect(ifKeptText({ figs: -0.83, fallBelow: [shoot(1, 0.61)] })).toBe(
      '0.8 figs fewer. 1 shoot falls below fruiting light: Shoot 1 on Old arm (from 31 % to 24 % of open sky, 0.6 figs fewer).',
    );
    const four = [0.4, 0.3, 0.2, 0].map((lost, n) => shoot(n, lost));
    expect(ifKeptText({ figs: 0.02, fallBelow: four })).toMatch(
      /^about as many figs\. 4 shoots fall .*; and more\.$/,
    );
    expect(ifKeptText({ figs: 0.31, fallBelow: [] })).toBe('0.3 figs more.');
    expect(ifKeptText({ figs: -0.04, fallBelow: [] })).toBeNull();
  });

  it('are whole sentences without an empty value', () => {
    for (const reason of reasons) {
      for (const units of ['metric', 'us'] as const) {
        const text = reasonText(reason, units);
        expect(text).toMatch(/^[A-Z].*\.$/);
        expect(text).not.toMatch(/undefined|NaN|null|\[object/);
      }
    }
  });

  it('show what was measured and the limit it is held to', () => {
    const told = (rule: string) => reasonText(reasons.find((one) => one.rule === rule) as Reason, 'metric');
    expect(told('water sprout')).toBe(
      'A water sprout: 88 cm long (limit 60 cm), 81 degrees above level (limit 70), its nodes 8.3 cm apart, from wood 3 years older.',
    );
    expect(told('below the fork')).toBe(
      'It sits on the trunk 21 cm above the soil, below the first fork as it is or is wanted (47 cm).',
    );
  });

  it('carry their figures in the units asked for', () => {
    expect(reasonText(reasons[6] as Reason, 'metric')).toBe(
      'It crosses the east limb: bark 1.2 cm apart, too near over 9 cm (limit 2 cm). The other is sound, is thicker.',
    );
    expect(reasonText(reasons[6] as Reason, 'us')).toContain('1/2 in apart, too near over 3 1/2 in');
    expect(reasonText(reasons[10] as Reason, 'metric')).toBe(
      'Kept, it would get 17 % of open sky and ripen about 1.0 fig, and shade away about 2.3 figs on the others.',
    );
    expect(reasonText(reasons[13] as Reason, 'metric')).toContain('7 cm with 1 node, at a cost of 0.4 figs');
  });

  it('of remarks read alone', () => {
    expect(remarkText({ about: 'no tip' })).toBe('No tip needs cutting.');
    expect(remarkText({ about: 'too high', branch: 'East limb', byM: 0.34 })).toContain(
      '34 cm (13 1/2 in) above',
    );
  });
});

describe('cautions', () => {
  const bare = {
    kind: 'rub off bud',
    thicknessM: 0,
    aboveGroundM: 1.1,
    isShoot: false,
    atNarrowFork: false,
    isSick: false,
    treeAgeYears: 4,
  } as const;

  it('always name sap and the doubt of the plan', () => {
    expect(cautionsFor(bare, values)).toEqual(['estimate', 'sap']);
  });

  it('grow with height, thickness, age and danger of the cut', () => {
    const cut = { ...bare, kind: 'remove' } as const;
    expect(cautionsFor(cut, values)).toContain('tools');
    expect(cautionsFor({ ...cut, aboveGroundM: 2.1 }, values)).toContain('ladder');
    expect(cautionsFor({ ...cut, aboveGroundM: 2.7 }, values)).toContain('power lines');
    expect(cautionsFor({ ...cut, thicknessM: 0.041 }, values)).toContain('saw');
    expect(cautionsFor({ ...cut, thicknessM: 0.041 }, values)).not.toContain('large limb');
    expect(cautionsFor({ ...cut, thicknessM: 0.11 }, values)).toContain('large limb');
    expect(cautionsFor({ ...cut, treeAgeYears: 23 }, values)).toContain('local rules');
    expect(cautionsFor({ ...cut, isSick: true }, values)).toContain('local rules');
    expect(cautionsFor({ ...bare, isShoot: true }, values)).toContain('tools');
    expect(cautionsFor({ ...cut, atNarrowFork: true }, values)).toContain('fork');
  });

  it('have a sentence each', () => {
    for (const text of Object.values(cautionText)) expect(text).toMatch(/^[A-Z].{20,}\.$/);
  });
});
