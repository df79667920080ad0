import { describe, expect, it } from 'vitest';
import { makeSamples } from '../../scripts/examples/samples.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { stanceOf, treeOf } from '../../src/document/views.ts';
import { writeTreeFile } from '../../src/document/writeTreeFile.ts';
import { closestApproach } from '../../src/geometry/distance.ts';
import { type Path, pathLengthM, pathUpTo, pointAt, tangentAt } from '../../src/geometry/path.ts';
import { type PlacedAxis, placeTree, radiusAtM } from '../../src/geometry/tree.ts';
import { angleBetweenDeg, sub } from '../../src/geometry/vec.ts';
import { bearingDeg, elevationDeg, fromUprightDeg, turnDeg } from '../../src/geometry/world.ts';
import { sampleFile, sampleIds, sampleText } from './sampleFiles.ts';

const placedOf = (file: TreeFile): PlacedAxis[] => [...placeTree(treeOf(file), stanceOf(file)).values()];
const kind = (file: TreeFile, wanted: string) => file.axes.filter((axis) => axis.kind === wanted);
const leaves = (file: TreeFile): number =>
  file.axes.reduce((sum, axis) => sum + (axis.foliage?.count ?? 0), 0);
const buds = (file: TreeFile) => file.axes.flatMap((axis) => axis.buds);
const heading = (path: Path) => sub(pointAt(path, 0.12), path[0] as Path[number]);

/** The path beyond the knot of the fork, where wood of necessity lies in wood. */
function beyondFork(one: PlacedAxis, knotM: number): Path {
  const reversed = [...one.path].reverse();
  return [...pathUpTo(reversed, Math.max(one.lengthM - knotM, 0.01))].reverse();
}

/** Pairs of axes whose bark meets away from their forks. */
function touching(file: TreeFile): string[] {
  const placed = placedOf(file);
  const found: string[] = [];
  placed.forEach((a, i) => {
    for (const b of placed.slice(0, i)) {
      const knotM =
        b === a.parent || a === b.parent ? 0.07 + 1.2 * (a.parent as PlacedAxis).axis.baseDiameterM : 0.07;
      const [pathA, pathB] =
        b === a.parent ? [beyondFork(a, knotM), b.path] : [beyondFork(a, 0.07), beyondFork(b, 0.07)];
      const near = closestApproach(pathA, pathB);
      const radii = (a.axis.tipDiameterM + b.axis.tipDiameterM) / 2;
      if (near.distanceM < radii) found.push(`${a.axis.id} ${b.axis.id}`);
    }
  });
  return found;
}

describe('the sample trees', () => {
  it('are what their generator makes; `node scripts/makeExamples.mjs` writes them', () => {
    const made = makeSamples.map((make) => make());
    expect(made.map((file) => file.id)).toEqual(sampleIds);
    for (const file of made)
      expect(writeTreeFile(file)).toBe(sampleText(file.id as (typeof sampleIds)[number]));
  });

  it('stand in Europe, in Japan and in the southern hemisphere, two of them before a wall', () => {
    const sites = sampleIds.map((id) => sampleFile(id).site);
    expect(sites.map((site) => site.timeZone.split('/')[0])).toEqual(['Europe', 'Europe', 'Asia', 'Pacific']);
    expect(sites.map((site) => Math.sign(site.latitudeDeg))).toEqual([1, 1, 1, -1]);
    expect(
      sites.filter((site) => site.surroundings.some((s) => s.kind === 'wall')).length,
    ).toBeGreaterThanOrEqual(2);
    for (const site of sites) expect(site.frost).not.toBeNull();
  });

  it.each(sampleIds)('%s: the wood thins out as it forks, and holds together at every fork', (id) => {
    const file = sampleFile(id);
    for (const parent of file.axes.filter((axis) => axis.condition !== 'dead')) {
      const children = file.axes.filter((axis) => axis.parentId === parent.id && axis.kind !== 'sucker');
      const squares = children.reduce((sum, child) => sum + child.baseDiameterM ** 2, 0);
      if (children.every((child) => child.kind === 'shoot')) continue;
      expect(squares / parent.baseDiameterM ** 2).toBeGreaterThan(0.25);
      expect(squares / parent.baseDiameterM ** 2).toBeLessThan(1.9);
    }
  });

  it.each(sampleIds)('%s: no wood passes through other wood', (id) => {
    const pairs = touching(sampleFile(id));
    expect(pairs).toEqual([]);
  });
});

describe('the potted fig at bud break', () => {
  const file = sampleFile('potted-fig-bud-break');
  const placed = placedOf(file);

  it('forks at 45 cm into four limbs 6 to 10 cm and 80 to 100 degrees apart, 45 to 60 degrees from upright', () => {
    const limbs = kind(file, 'scaffold');
    expect(limbs[0]?.atM).toBe(0.45);
    const gaps = limbs.slice(1).map((limb, i) => limb.atM - (limbs[i]?.atM ?? 0));
    for (const gap of gaps) expect(gap).toBeGreaterThanOrEqual(0.06);
    for (const gap of gaps) expect(gap).toBeLessThanOrEqual(0.1);
    const headings = placed.filter((p) => p.axis.kind === 'scaffold').map((p) => heading(p.path));
    const bearings = headings.map(bearingDeg).sort((a, b) => a - b);
    bearings.forEach((bearing, i) => {
      const turn = Math.abs(turnDeg(bearing, bearings[(i + 1) % 4] as number));
      expect(turn).toBeGreaterThan(80);
      expect(turn).toBeLessThan(100);
    });
    for (const upright of headings.map(fromUprightDeg)) {
      expect(upright).toBeGreaterThan(45);
      expect(upright).toBeLessThan(60);
    }
  });

  it('has a dozen laterals and 50 to 60 buds, none on the trunk', () => {
    expect(kind(file, 'lateral')).toHaveLength(12);
    expect(buds(file).length).toBeGreaterThanOrEqual(50);
    expect(buds(file).length).toBeLessThanOrEqual(60);
    expect(file.axes[0]?.buds).toEqual([]);
  });
});

describe('the potted fig in leaf', () => {
  const file = sampleFile('potted-fig-in-leaf');
  const bare = sampleFile('potted-fig-bud-break');

  it('is the same tree: same wood, a shoot with its own leaves from every bud', () => {
    const shoots = kind(file, 'shoot');
    expect(shoots.map((shoot) => shoot.id)).toEqual(buds(bare).map((bud) => `${bud.id}-shoot`));
    const wood = file.axes.filter((axis) => axis.kind !== 'shoot');
    expect(wood).toEqual(bare.axes.map((axis) => ({ ...axis, buds: [] })));
    expect(leaves(file)).toBeGreaterThanOrEqual(400);
    expect(leaves(file)).toBeLessThanOrEqual(900);
  });

  it('has shoots that turn up towards the light', () => {
    for (const { path, lengthM, axis } of placedOf(file)) {
      if (axis.kind !== 'shoot' || elevationDeg(heading(path)) > 65) continue;
      expect(elevationDeg(tangentAt(path, lengthM))).toBeGreaterThan(elevationDeg(tangentAt(path, 0)));
    }
  });

  it('stays clear of the house wall behind it', () => {
    const north = Math.max(...placedOf(file).flatMap((p) => p.path.map((point) => -point[2])));
    expect(north).toBeLessThan(1.3);
  });
});

describe('the old fig in the ground', () => {
  const file = sampleFile('old-fig-in-ground');
  const placed = new Map(placedOf(file).map((p) => [p.axis.id, p]));
  const of = (id: string): PlacedAxis => placed.get(id) as PlacedAxis;

  it('is about 2.5 m high and carries 400 to 900 leaves', () => {
    const top = Math.max(...[...placed.values()].flatMap((p) => p.path.map((point) => point[1])));
    expect(top).toBeGreaterThan(2.3);
    expect(top).toBeLessThan(2.75);
    expect(leaves(file)).toBeGreaterThanOrEqual(400);
    expect(leaves(file)).toBeLessThanOrEqual(900);
  });

  it('has two limbs that rub', () => {
    const [a, b] = [of('north-west-rubbing'), of('south-west-2')];
    const near = closestApproach(a.path, b.path);
    const gapM = near.distanceM - radiusAtM(a, near.alongFirstM) - radiusAtM(b, near.alongSecondM);
    expect(gapM).toBeGreaterThan(0);
    expect(gapM).toBeLessThan(0.004);
  });

  it('has dead wood without leaves and one diseased branch', () => {
    expect(file.axes.filter((axis) => axis.condition === 'dead').map((axis) => axis.foliage)).toEqual([
      null,
      null,
    ]);
    expect(file.axes.filter((axis) => axis.condition === 'diseased')).toHaveLength(1);
  });

  it('has a steep inward water sprout with long internodes', () => {
    const sprout = of('water-sprout');
    expect(sprout.lengthM).toBeGreaterThan(0.6);
    expect(elevationDeg(sub(pointAt(sprout.path, sprout.lengthM), pointAt(sprout.path, 0)))).toBeGreaterThan(
      70,
    );
    expect(sprout.lengthM / (sprout.axis.foliage?.count ?? 0)).toBeGreaterThan(0.075);
    const fromTrunk = (i: number) => {
      const [x, , z] = sprout.path.at(i) as Path[number];
      return Math.hypot(x - 0.35, z - 0.6);
    };
    expect(fromTrunk(-1)).toBeLessThan(fromTrunk(0));
  });

  it('has two suckers below 20 cm of the trunk and one from the soil', () => {
    expect(kind(file, 'sucker').map((axis) => [axis.parentId, axis.atM])).toEqual([
      ['trunk', 0.074],
      ['trunk', 0.163],
      ['trunk', 0],
    ]);
    expect(of('sucker-3').path[0]?.[1]).toBeLessThan(0);
  });

  it('has one fork narrower than 30 degrees among older wood', () => {
    const angles = [...placed.values()]
      .filter((p) => p.axis.kind === 'lateral' || p.axis.kind === 'scaffold')
      .map(
        (p) =>
          [
            p.axis.id,
            angleBetweenDeg(heading(p.path), tangentAt((p.parent as PlacedAxis).path, p.axis.atM)),
          ] as const,
      );
    expect(angles.filter(([, angle]) => angle < 30).map(([id]) => id)).toEqual(['north-west-fork']);
    expect(angles.filter(([, angle]) => angle < 35).map(([id]) => id)).toEqual(['north-west-fork']);
  });
});

describe('the young whip', () => {
  const file = sampleFile('young-whip');

  it('is 90 cm of wood with nothing but buds, at bud break in September', () => {
    expect(file.axes).toHaveLength(1);
    expect(pathLengthM(file.axes[0]?.path ?? [])).toBeCloseTo(0.9, 3);
    expect(buds(file).length).toBeGreaterThan(15);
    expect(file.season.budBreakOn.slice(5, 7)).toBe('09');
  });
});
