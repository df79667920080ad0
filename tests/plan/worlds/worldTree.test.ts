import { describe, expect, it } from 'vitest';
import { pathLengthM } from '../../../src/geometry/path.ts';
import { bearingDeg, elevationDeg, turnDeg } from '../../../src/geometry/world.ts';
import { deviate, withinRange } from '../../../src/plan/worlds/deviate.ts';
import { sketchErrors, worldTree } from '../../../src/plan/worlds/worldTree.ts';
import { figParameters } from '../../../src/species/fig.ts';
import { axis, bud, limb, straight, tree, trunk } from '../smallTree.ts';

const seed = 17;
const numbers = Array.from({ length: 400 }, (_, number) => number);
const spreadOf = (values: readonly number[]): number => {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length);
};
const meanOf = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

describe('the deviates of the worlds', () => {
  const drawn = numbers.map((number) => deviate({ number, seed }, 3, 71));

  it('come in pairs that cancel, spread by nearly 1 and never beyond 2', () => {
    for (let pair = 0; pair < numbers.length; pair += 2)
      expect(drawn[pair]).toBe(-(drawn[pair + 1] as number));
    // A normal deviate with its tails moved to 2 has the standard deviation 0.959; that of 200 pairs is within 0.05.
    expect(spreadOf(drawn)).toBeGreaterThan(0.86);
    expect(spreadOf(drawn)).toBeLessThan(1.06);
    expect(Math.max(...drawn)).toBeLessThanOrEqual(2);
  });

  it('are others for another purpose and another seed', () => {
    expect(deviate({ number: 4, seed }, 3, 72)).not.toBe(drawn[4]);
    expect(deviate({ number: 4, seed: 18 }, 3, 71)).not.toBe(drawn[4]);
  });

  it('reach the ends of a range at two, from wherever in it the grower has set the figure', () => {
    const { min, max, value } = figParameters.fruitHalfAtFraction;
    expect(withinRange('fruitHalfAtFraction', value, 0)).toBe(value);
    expect(withinRange('fruitHalfAtFraction', value, 2)).toBeCloseTo(max, 12);
    expect(withinRange('fruitHalfAtFraction', value, -2)).toBeCloseTo(min, 12);
    expect(withinRange('fruitHalfAtFraction', max, 1.3)).toBe(max);
    expect(withinRange('fruitHalfAtFraction', 0.31, -1)).toBeCloseTo(0.31 - (0.31 - min) / 2, 12);
  });
});

describe('the tree of a world', () => {
  const east = limb('east', 93, {
    buds: [bud('e1', 0.31), bud('e2', 0.335), bud('e3', 0.36), bud('tip', 0.83)],
  });
  const sketched = tree(
    trunk(),
    east,
    limb('north', 4),
    axis('twig', 'east', { atM: 0.345, path: straight(0.27, 10, 50) }),
  );
  const worlds = numbers.map((number) => worldTree(sketched, { number, seed }));
  const eastIn = ({ tree: { axes } }: (typeof worlds)[number]) => axes[1] as (typeof sketched.axes)[number];
  const paths = worlds.map((world) => eastIn(world).path.at(-1) as readonly [number, number, number]);

  it('errs by what the sketch errs by: in bearing, slope and length, right in the mean', () => {
    const bearings = paths.map((to) => turnDeg(93, bearingDeg(to)));
    const slopes = paths.map((to) => elevationDeg(to) - 38);
    const lengths = worlds.map((world) => pathLengthM(eastIn(world).path) - 0.83);
    const lengthM = Math.hypot(sketchErrors.tapeM, sketchErrors.lengthShare * 0.83);
    for (const [errors, expected] of [
      [bearings, sketchErrors.bearingDeg],
      [slopes, sketchErrors.elevationDeg],
      [lengths, lengthM],
    ] as const) {
      expect(Math.abs(meanOf(errors)) / expected).toBeLessThan(0.02);
      expect(spreadOf(errors) / expected).toBeGreaterThan(0.84);
      expect(spreadOf(errors) / expected).toBeLessThan(1.08);
    }
  });

  it('keeps buds and branches in their order along the wood, and the bud at the tip at the tip', () => {
    for (const world of worlds) {
      const { buds, path } = eastIn(world);
      const twig = world.tree.axes[3]?.atM as number;
      const places = [buds[0]?.atM, buds[1]?.atM, twig, buds[2]?.atM, buds[3]?.atM] as number[];
      expect(places).toEqual([...places].sort((a, b) => a - b));
      expect(pathLengthM(path) - (places[4] as number)).toBeCloseTo(0, 9);
    }
  });

  it('has a cut between the same buds and branches as the sketch', () => {
    for (const world of worlds.slice(0, 50)) {
      const { atM } = world.cut({ kind: 'remove', target: 'east', atM: 0.3399 });
      expect(atM).toBeGreaterThanOrEqual(eastIn(world).buds[1]?.atM as number);
      expect(atM).toBeLessThanOrEqual(world.tree.axes[3]?.atM as number);
    }
  });

  it('gives a limb the same errors whatever else stands on the tree', () => {
    const alone = worldTree(tree(trunk(), east), { number: 5, seed });
    expect(alone.tree.axes[1]?.path).toEqual(eastIn(worlds[5] as (typeof worlds)[number]).path);
  });
});
