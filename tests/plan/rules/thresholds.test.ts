/** Each limit of the rules is a setting: the same small tree has the fault by one value and has it not by another. */
import { describe, expect, it } from 'vitest';
import type { Axis } from '../../../src/geometry/tree.ts';
import { scale, type Vec3 } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { findFaults } from '../../../src/plan/faults.ts';
import { figFaults } from '../../../src/species/fig/faults.ts';
import { type FigValues, figValues } from '../../../src/species/fig.ts';
import { axis, limb, stance, straight, tree, trunk } from '../smallTree.ts';

/** Two laterals of neighbouring limbs whose lines pass 4.5 cm apart; each is 1.7 cm thick at its base and 0.9 at its tip. */
const crossed = [
  limb('east', 90, { path: straight(0.83, 90, 0) }),
  limb('north', 0, { path: straight(0.83, 0, 0) }),
  axis('a', 'east', { atM: 0.5, path: straight(0.9, 0, 0) }),
  axis('b', 'north', {
    atM: 0.5,
    path: [
      [0, 0, 0],
      [0, 0.045, 0],
      [0.7, 0.045, 0],
    ],
  }),
];

/** Comes back to its own limb 20 cm beyond where it left it. */
const comingBack = [
  limb('east', 90, { path: straight(0.83, 90, 0) }),
  axis('back', 'east', {
    atM: 0.2,
    path: [
      [0, 0, 0],
      [0.1, 0.13, 0.03],
      [0.2, 0.012, 0],
    ],
  }),
];

const inwards = (lengthM: number, bearing: number) => [
  limb('east', 90),
  limb('west', 270),
  axis('in', 'east', { atM: 0.6, path: straight(lengthM, bearing, 30) }),
];

const forked = (angleDeg: number, rest: Partial<Axis> = {}) => [
  limb('east', 90, { path: straight(0.83, 90, 20), baseDiameterM: 0.044, tipDiameterM: 0.042 }),
  axis('twin', 'east', { atM: 0.4, path: straight(0.7, 90, 20 + angleDeg), ...rest }),
];

/** Leaves at 20 degrees for five centimetres, then at 70. */
const bent: Vec3[] = [[0, 0, 0], scale(direction(90, 40), 0.05), [0, 0, 0]];
const [, knee] = bent as [Vec3, Vec3, Vec3];
const onward = scale(direction(90, 90), 0.5);
bent[2] = [knee[0] + onward[0], knee[1] + onward[1], knee[2] + onward[2]];

/** 66 cm long, 75 degrees steep, eight nodes, on wood three years older. */
const sprouting = [
  limb('east', 90, { grownIn: 2023 }),
  axis('up', 'east', {
    kind: 'shoot',
    grownIn: 2026,
    atM: 0.5,
    path: straight(0.66, 90, 75),
    foliage: { count: 8, midribM: 0.16, source: 'measured' },
  }),
  // Bears so many leaves that a year may take the sprout.
  axis('crown', 'east', {
    kind: 'shoot',
    grownIn: 2026,
    atM: 0.62,
    path: straight(0.43, 90, 41),
    foliage: { count: 27, midribM: 0.16, source: 'measured' },
  }),
];

const low = [
  limb('east', 90),
  axis('low', 'trunk', { kind: 'shoot', atM: 0.17, path: straight(0.2, 300, 40) }),
];

type Setting = keyof typeof figFaults;

/** Setting, tree, what goes by the first value and stays by the second; other settings that the tree needs. */
const rows: readonly (readonly [Setting, readonly Axis[], string, number, number, Partial<FigValues>?])[] = [
  ['crossingGapCm', crossed, 'b', 5, 4],
  ['crossingClearanceCm', crossed, 'b', 3.5, 2.5],
  ['crossingLeftOutCm', comingBack, 'back', 15, 25],
  ['inwardInnerFraction', inwards(0.33, 265), 'in', 0.33, 0.25],
  ['inwardShortestCm', inwards(0.33, 265), 'in', 25, 40],
  ['inwardHeadsInFraction', inwards(0.45, 235), 'in', 0.4, 0.48, { inwardInnerFraction: 0.5 }],
  ['narrowForkDeg', forked(38), 'twin', 45, 35],
  ['narrowForkDoubtDeg', forked(33), 'twin', 0, 3],
  ['narrowForkMeasuredCm', forked(0, { path: bent }), 'twin', 5, 15],
  ['narrowForkRemarkOverCm', forked(23, { baseDiameterM: 0.035 }), 'twin', 4, 3],
  ['waterSproutElevationDeg', sprouting, 'up', 70, 80],
  ['waterSproutLengthCm', sprouting, 'up', 60, 80],
  ['waterSproutOnWoodYears', sprouting, 'up', 3, 4],
  ['waterSproutInternodeCm', sprouting, 'up', 7, 9],
  ['suckerBelowCm', low, 'low', 20, 10],
];

for (const [setting, axes, fault, has, hasNot, others = {}] of rows) {
  describe(`the limit ${setting}`, () => {
    const gone = (value: number): string[] => {
      const values = figValues({ ...others, [setting]: value });
      return findFaults(tree(trunk(), ...axes), stance, values).cuts.map(({ target }) => target);
    };

    it(`is a setting: ${fault} goes at ${has}, and stays at ${hasNot}`, () => {
      expect(gone(has)).toEqual([fault]);
      expect(gone(hasNot)).toEqual([]);
    });

    it('tells its source and range', () => {
      const { source, min, max, adjustable } = figFaults[setting];
      expect(source.length).toBeGreaterThan(10);
      expect(min).toBeLessThan(max);
      expect(adjustable).toBe(true);
    });
  });
}

it('are all held so', () => {
  expect(new Set(rows.map(([setting]) => setting))).toEqual(new Set(Object.keys(figFaults)));
});
