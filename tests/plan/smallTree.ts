/** Small trees for the tests of the plan, in numbers that are not round. */
import type { Axis, Bud, Stance, Tree } from '../../src/geometry/tree.ts';
import type { Vec3 } from '../../src/geometry/vec.ts';
import { scale } from '../../src/geometry/vec.ts';
import { direction } from '../../src/geometry/world.ts';
import type { PlanInput } from '../../src/plan/input.ts';
import { type TracedSeason, untracedSeason } from '../../src/plan/tracedSeason.ts';
import { traceUpTo } from '../../src/plan/traceUpTo.ts';
import { workYear } from '../../src/plan/windows.ts';
import { figValues } from '../../src/species/fig.ts';

export const stance: Stance = { foot: [0, 0.33, 0], turnedDeg: 0 };

export const values = figValues({});

export function axis(id: string, parentId: string | null, rest: Partial<Axis> = {}): Axis {
  return {
    id,
    name: id,
    kind: 'lateral',
    parentId,
    atM: 0,
    path: [
      [0, 0, 0],
      [0, 0.41, 0],
    ],
    baseDiameterM: 0.017,
    tipDiameterM: 0.009,
    grownIn: 2025,
    condition: 'live',
    buds: [],
    foliage: null,
    pin: null,
    ...rest,
  };
}

export const bud = (id: string, atM: number, aroundDeg = 0, pin: Bud['pin'] = null): Bud => ({
  id,
  atM,
  aroundDeg,
  pin,
});

/** A straight path of a length towards a bearing and an elevation. */
export function straight(lengthM: number, bearing: number, elevation: number): readonly Vec3[] {
  return [[0, 0, 0], scale(direction(bearing, elevation), lengthM)];
}

export const trunk = (rest: Partial<Axis> = {}): Axis =>
  axis('trunk', null, {
    name: 'Trunk',
    kind: 'trunk',
    path: straight(0.62, 0, 90),
    baseDiameterM: 0.058,
    tipDiameterM: 0.041,
    grownIn: 2019,
    ...rest,
  });

/** A limb that leaves the trunk, older than last year. */
export const limb = (id: string, bearing: number, rest: Partial<Axis> = {}): Axis =>
  axis(id, 'trunk', {
    kind: 'scaffold',
    atM: 0.47,
    path: straight(0.83, bearing, 38),
    baseDiameterM: 0.029,
    tipDiameterM: 0.014,
    grownIn: 2022,
    ...rest,
  });

export const tree = (...axes: readonly Axis[]): Tree => ({ axes });

/** A plan's input with a temperate garden round the tree. */
export function planInput(of: Tree, rest: Partial<PlanInput> = {}): PlanInput {
  return {
    tree: of,
    stance,
    site: {
      name: 'Test garden',
      latitudeDeg: 43.7,
      longitudeDeg: 4.3,
      timeZone: 'Europe/Paris',
      elevationM: 57,
      groundReflectance: 0.19,
      climate: {
        source: 'guess',
        meanC: [6.3, 7.4, 10.6, 13.3, 17.4, 21.6, 24.3, 23.8, 19.9, 15.7, 10.4, 7.1],
        minC: [2.1, 2.6, 5.4, 8.2, 12.1, 15.9, 18.3, 18.1, 14.7, 11.3, 6.2, 3.1],
        sunshineH: [4.4, 5.3, 6.6, 7.6, 8.8, 10.4, 11.3, 10.1, 8.1, 5.7, 4.7, 4.2],
      },
      frost: { lastOfSpring: '03-17', firstOfAutumn: '11-19' },
    },
    values,
    ripening: 'mid',
    bearsFirstCrop: true,
    budBreakOn: '2026-03-29',
    date: '2026-04-03',
    potVolumeL: null,
    fixed: [],
    viewpoint: null,
    seed: 3,
    leafSeed: 3,
    waves: 2,
    ...rest,
  };
}

/** Its season with the light traced, grown as if what is in `notSharing` took no part of the reserve. */
export function traced(input: PlanInput, notSharing: ReadonlySet<string> = new Set()): TracedSeason {
  const { season } = workYear(input);
  return drain(traceUpTo(input.waves, untracedSeason(input, season, notSharing, []), input));
}

/** Runs steps to their end. */
export function drain<Result>(steps: Generator<unknown, Result, void>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
