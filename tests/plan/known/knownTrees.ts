/** Trees built so that a grower, or plain geometry, knows the answer before any program does. In numbers that are not round. */
import type { Surface } from '../../../src/geometry/surface.ts';
import type { Axis, Tree } from '../../../src/geometry/tree.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import type { PlanInput } from '../../../src/plan/input.ts';
import { type PlanResult, planJob } from '../../../src/plan/planJob.ts';
import { tryCuts } from '../../../src/plan/trial.ts';
import type { Monthly } from '../../../src/season/site.ts';
import { axis, drain, limb, planInput, straight, tree, trunk } from '../smallTree.ts';

/** A day in full leaf of the garden in the north, and in that of the south. */
export const summer = '2026-07-01';

export const planOf = (of: Tree, rest: Partial<PlanInput> = {}): PlanResult =>
  drain(planJob(planInput(of, { waves: 4, ...rest })));

export const targets = ({ plan }: PlanResult): string[] => plan.cuts.map(({ target }) => target);

/** Share of open sky of each shoot when only these cuts are made; of the plan's own when left out. */
export function lightsOf({ plan, trial }: PlanResult, cutIds = plan.cuts.map(({ id }) => id)) {
  return new Map(tryCuts(trial, cutIds).shoots.map(({ id, lightFraction }) => [id, lightFraction]));
}

export interface ShootForm {
  readonly leaves: number;
  readonly lengthM: number;
  readonly midribM: number;
  readonly baseM?: number;
}

/** A shoot in leaf, nearly upright. */
export const upright = (
  id: string,
  on: string,
  atM: number,
  form: ShootForm,
  rest: Partial<Axis> = {},
): Axis =>
  axis(id, on, {
    kind: 'shoot',
    grownIn: 2026,
    atM,
    path: straight(form.lengthM, 90, 88),
    baseDiameterM: form.baseM ?? 0.012,
    tipDiameterM: 0.007,
    foliage: { count: form.leaves, midribM: form.midribM, source: 'measured' },
    ...rest,
  });

/** A limb that runs level to the east, so many metres south of the trunk (north where below 0). */
export const eastward = (id: string, southM: number, rest: Partial<Axis> = {}): Axis =>
  axis(id, 'trunk', {
    kind: 'scaffold',
    atM: 0.6,
    path: [
      [0, 0, 0],
      [0, 0.02, southM],
      [0.9, 0.05, southM],
    ],
    baseDiameterM: 0.03,
    tipDiameterM: 0.02,
    grownIn: 2022,
    ...rest,
  });

/** Two limbs far out with good shoots, so that most leaves of the tree are out of the question. */
const wings: readonly Axis[] = [70, 290].flatMap((bearing) => [
  limb(`wing${bearing}`, bearing, { path: straight(2.2, bearing, 10) }),
  ...[0.9, 1.4, 1.9, 2.1].map((atM, i) =>
    upright(`w${bearing}-${i}`, `wing${bearing}`, atM, { leaves: 12, lengthM: 0.6, midribM: 0.2 }),
  ),
]);

/**
 * Three thick shoots that bear nothing (all their nodes are blind) but carry large leaves, and small shoots that bear. `southM`: how
 * far south of the small ones the thick ones stand.
 */
export function screened(southM: number): Tree {
  const thick: ShootForm = { leaves: 3, lengthM: 0.45, midribM: 0.3, baseM: 0.026 };
  const small: ShootForm = { leaves: 7, lengthM: 0.3, midribM: 0.12 };
  return tree(
    trunk(),
    eastward('screen limb', (2 * southM) / 3),
    eastward('fruit limb', -southM / 3),
    ...[0.35, 0.5, 0.65].map((atM, i) => upright(`screen${i}`, 'screen limb', atM, thick)),
    ...[0.4, 0.55].map((atM, i) => upright(`fruit${i}`, 'fruit limb', atM, small)),
    upright('screen end', 'screen limb', 0.9, small),
    upright('fruit end', 'fruit limb', 0.9, small),
    ...wings,
  );
}

/** A dense row of tall shoots that the grower keeps, and three small shoots so far north of it. */
export function hedged(northM: number): Tree {
  const tall: ShootForm = { leaves: 18, lengthM: 1.1, midribM: 0.25 };
  const small: ShootForm = { leaves: 4, lengthM: 0.2, midribM: 0.12 };
  return tree(
    trunk(),
    eastward('row', northM / 2),
    eastward('beside', -northM / 2, {
      path: [
        [0, 0, 0],
        [0, 0.02, -northM / 2],
        [0.5, 0.05, -northM / 2],
      ],
    }),
    ...Array.from({ length: 9 }, (_, i) =>
      upright(`tall${i}`, 'row', 0.13 + 0.09 * i, tall, { pin: 'keep' }),
    ),
    ...[0.3, 0.42, 0.55].map((atM, i) => upright(`small${i}`, 'beside', atM, small)),
  );
}

/** A tree as a mirror shows it that stands to its north: what was south of the trunk is north of it. */
export const mirrored = (of: Tree): Tree => ({
  axes: of.axes.map((one) => ({
    ...one,
    path: one.path.map(([east, up, south]): Vec3 => [east, up, -south]),
    buds: one.buds.map((bud) => ({ ...bud, aroundDeg: 180 - bud.aroundDeg })),
  })),
});

const halfYearOn = (months: Monthly): Monthly =>
  months.map((_, i) => months[(i + 6) % 12]) as unknown as Monthly;

/** The same garden as far south of the equator, its months half a year on. */
export function southern(date: string): Partial<PlanInput> {
  const { site } = planInput(tree(trunk()));
  const { climate } = site;
  return {
    date,
    budBreakOn: '2026-09-28',
    site: {
      ...site,
      latitudeDeg: -site.latitudeDeg,
      climate: {
        ...climate,
        meanC: halfYearOn(climate.meanC),
        minC: halfYearOn(climate.minC),
        ...(climate.sunshineH && { sunshineH: halfYearOn(climate.sunshineH) }),
      },
      frost: { lastOfSpring: '09-16', firstOfAutumn: '05-20' },
    },
  };
}

/** A box that nothing shines through, from one corner to the other. */
export function block([x0, y0, z0]: Vec3, [x1, y1, z1]: Vec3): Surface {
  const corner = (i: number): Vec3 => [i & 1 ? x1 : x0, i & 2 ? y1 : y0, i & 4 ? z1 : z0];
  const sides = [
    [0, 1, 3, 2],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 3, 7, 6],
    [0, 2, 6, 4],
    [1, 3, 7, 5],
  ];
  const triangles = sides.flatMap(([a = 0, b = 0, c = 0, d = 0]) => [a, b, c, a, c, d].flatMap(corner));
  return {
    shape: 'mesh',
    owner: 0,
    optics: { transmittance: 0, reflectance: 0 },
    triangles: Float64Array.from(triangles),
  };
}
