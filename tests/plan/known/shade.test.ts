import { describe, expect, it } from 'vitest';
import type { Tree } from '../../../src/geometry/tree.ts';
import type { PlanInput } from '../../../src/plan/input.ts';
import { axis, bud, limb, straight, tree, trunk } from '../smallTree.ts';
import {
  block,
  eastward,
  hedged,
  lightsOf,
  mirrored,
  planOf,
  screened,
  southern,
  summer,
  targets,
  upright,
} from './knownTrees.ts';

const mean = (lights: ReadonlyMap<string, number>, ids: readonly string[]): number =>
  ids.reduce((sum, id) => sum + (lights.get(id) ?? Number.NaN), 0) / ids.length;

/** The same question on both halves of the earth: `of` has its sunny side where the mirror has it, too. */
const halves: readonly (readonly [string, (of: Tree) => Tree, Partial<PlanInput>])[] = [
  ['north', (of) => of, { date: summer }],
  ['south', mirrored, southern('2026-12-31')],
];

describe.each(halves)('shoots one behind the other, %s of the equator', (_, turned, rest) => {
  const screens = ['screen0', 'screen1', 'screen2'];
  const fruits = ['fruit0', 'fruit1'];
  const front = planOf(turned(screened(0.18)), rest);
  const behind = planOf(turned(screened(-0.18)), rest);
  const lightGained = (of: typeof front): number =>
    mean(lightsOf(of), fruits) - mean(lightsOf(of, []), fruits);

  it('takes those which bear nothing and shade others, and nothing else', () => {
    expect(targets(front)).toEqual(screens);
    expect(targets(behind)).toEqual(screens);
  });

  it('says of each that it bears nothing and what the shaded ones gain', () => {
    for (const { reasons, gain } of front.plan.cuts) {
      const [reason] = reasons;
      expect(reason).toMatchObject({ rule: 'crowding', figsIfKept: 0 });
      expect(gain.figs).toBeGreaterThan(0);
      expect(fruits).toContain(gain.lights[0]?.id);
    }
  });

  it('finds more light to gain where they stand towards the sun', () => {
    expect(lightGained(front)).toBeGreaterThan(1.2 * lightGained(behind));
    expect(lightGained(front)).toBeGreaterThan(0.1);
  });
});

describe.each(halves)('small shoots beside a dense row that stays, %s of the equator', (_, turned, rest) => {
  const smalls = ['small0', 'small1', 'small2'];

  it.each([1, 2])('stay on its sunny side and get half again as much light there, leaves %i', (leafSeed) => {
    const shady = planOf(turned(hedged(0.16)), { ...rest, leafSeed });
    const sunny = planOf(turned(hedged(-0.16)), { ...rest, leafSeed });
    expect(targets(sunny)).toEqual([]);
    expect(mean(lightsOf(sunny, []), smalls)).toBeGreaterThan(1.5 * mean(lightsOf(shady, []), smalls));
    for (const { target, reasons } of shady.plan.cuts) {
      expect(smalls).toContain(target);
      const [reason] = reasons;
      // Under 0.12 of open sky no fig sets; a shoot is near that before it goes.
      expect(reason?.rule === 'crowding' && reason.ownShare).toBeLessThan(0.13);
      expect(reason?.rule === 'crowding' && reason.figsIfKept).toBeLessThan(0.2);
    }
  });
});

describe('a limb that a wall shades wholly', () => {
  const buds = (of: string, outermostM: number) =>
    Array.from({ length: 4 }, (_, i) => bud(`${of}${i}`, outermostM - 0.12 * i, 137.5 * i));
  const of = tree(
    trunk(),
    limb('south', 180, { buds: buds('s', 0.8) }),
    limb('north', 0, { path: straight(1.6, 0, 20), buds: buds('n', 1.58) }),
  );
  const dark = planOf(of, { fixed: [block([-3, 0, -5], [3, 4, -0.3])] });

  it('keeps the outermost bud, which carries the limb on, and no other', () => {
    expect(targets(dark)).toEqual(['n1', 'n2', 'n3']);
    expect([...lightsOf(dark)].filter(([id]) => id === 'n0')).toEqual([['n0', 0]]);
  });

  it('says that they would get nothing and cost the others nothing', () => {
    for (const { reasons } of dark.plan.cuts) {
      expect(reasons[0]).toMatchObject({ rule: 'crowding', ownShare: 0, figsIfKept: 0, figsByShade: 0 });
    }
    expect(dark.plan.remarks.join(' ')).not.toContain('fewer than doing nothing');
  });

  it('keeps them all where the wall is not', () => {
    expect(targets(planOf(of))).toEqual([]);
  });
});

describe('dead wood across the sun', () => {
  const hulk = axis('hulk', 'trunk', {
    kind: 'scaffold',
    atM: 0.6,
    condition: 'dead',
    path: [
      [0, 0, 0],
      [0, 0.35, 0.3],
      [1.03, 0.5, 0.3],
    ],
    baseDiameterM: 0.09,
    tipDiameterM: 0.08,
    grownIn: 2019,
  });
  const shoots = [0.3, 0.5, 0.8].map((atM, i) =>
    upright(`f${i}`, 'east', atM, { leaves: 10, lengthM: 0.2, midribM: 0.12 }),
  );
  const found = planOf(tree(trunk(), eastward('east', 0.02), ...shoots, hulk), { date: summer });

  it('goes first and alone, whole, now, for being dead', () => {
    expect(found.plan.cuts).toMatchObject([
      { target: 'hulk', atM: 0, reasons: [{ rule: 'dead' }], when: { from: summer } },
    ]);
  });

  it('costs no fig, and every shoot below it gains light', () => {
    expect(found.plan.score.plan.ripeFigs).toBeGreaterThan(found.plan.score.doNothing.ripeFigs);
    expect(found.plan.cuts[0]?.gain.lights.map(({ id }) => id).sort()).toEqual(['f0', 'f1', 'f2']);
    const [before, after] = [lightsOf(found, []), lightsOf(found)];
    for (const [id, light] of before) expect(after.get(id)).toBeGreaterThan(light);
  });

  it('is not held back or called severe for its thickness', () => {
    expect(found.plan.remarks).toEqual([]);
  });
});

describe('a sucker through the crown', () => {
  const sucker = axis('sucker', 'trunk', {
    kind: 'sucker',
    grownIn: 2026,
    path: [
      [0, 0, 0],
      [0.45, 0.6, 0.15],
      [0.5, 1.63, 0.15],
    ],
    foliage: { count: 25, midribM: 0.25, source: 'measured' },
  });
  const shoots = [0.3, 0.5, 0.8].map((atM, i) =>
    upright(`f${i}`, 'east', atM, { leaves: 10, lengthM: 0.4, midribM: 0.15 }),
  );
  const found = planOf(tree(trunk(), eastward('east', 0.1), ...shoots, sucker), { date: summer });

  it('goes, alone, for being one, though it has more leaves than the tree', () => {
    expect(found.plan.cuts).toMatchObject([
      { target: 'sucker', atM: 0, reasons: [{ rule: 'sucker', originHeightM: 0 }] },
    ]);
    expect(found.plan.remarks.filter((text) => text.includes('leaves'))).toEqual([]);
  });

  it('leaves more light to the shoot that it stood beside than to any other', () => {
    expect(found.plan.cuts[0]?.gain.lights[0]?.id).toBe('f1');
    expect(found.plan.cuts[0]?.gain.lights[0]?.shareGain).toBeGreaterThan(0.1);
  });

  it('says what its figs would have been', () => {
    expect(found.plan.remarks.join(' ')).toContain('figs fewer than doing nothing');
  });
});
