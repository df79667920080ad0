import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../../src/document/treeFile.ts';
import { stanceOf } from '../../../src/document/views.ts';
import { writeTreeFile } from '../../../src/document/writeTreeFile.ts';
import { chord } from '../../../src/editor/figures.ts';
import { alongWallDeg } from '../../../src/editor/forms/alongWall.ts';
import {
  type FormFigure,
  type FormFigures,
  type FormName,
  formFigureOutside,
  formNames,
  formRanges,
  startFigures,
} from '../../../src/editor/forms/formFigures.ts';
import { startFromForm } from '../../../src/editor/forms/startFromForm.ts';
import { pathLengthM } from '../../../src/geometry/path.ts';
import { type PlacedAxis, placeTree, radiusAtM } from '../../../src/geometry/tree.ts';
import { length, type Vec3 } from '../../../src/geometry/vec.ts';
import { findFaults } from '../../../src/plan/faults.ts';
import { figValues } from '../../../src/species/fig.ts';
import { smallTree } from '../smallTree.ts';

const counts: readonly FormFigure[] = ['limbs', 'laterals', 'shoots'];

/** Any figures that the sliders of the form can give. */
const figuresOf = (form: FormName): fc.Arbitrary<FormFigures> => {
  const ranges = formRanges[form];
  const one = (name: FormFigure) => {
    const { min, max } = ranges[name];
    return counts.includes(name) ? fc.integer({ min, max }) : fc.double({ min, max, noNaN: true });
  };
  return fc.record({
    trunkM: one('trunkM'),
    limbs: one('limbs'),
    spreadM: one('spreadM'),
    laterals: one('laterals'),
    shoots: one('shoots'),
    shootM: one('shootM'),
    towardsDeg: one('towardsDeg'),
  });
};

const anyForm = fc
  .constantFrom(...formNames)
  .chain((form) => fc.tuple(fc.constant(form), figuresOf(form), fc.integer({ min: 0, max: 1e6 })));

const inBuds = fc.constantFrom('shoots' as const, 'buds' as const);
const runs = { seed: 7731, numRuns: 40 };

const placed = (file: TreeFile): PlacedAxis[] => [
  ...placeTree({ axes: file.axes }, { foot: [0, 0, 0], turnedDeg: 0 }).values(),
];
const kinds = (file: TreeFile, kind: string) => file.axes.filter((axis) => axis.kind === kind);

describe('a tree started from any form, with any figures of its sliders (seed 7731)', () => {
  it('is read back from its file as it was, without a note', () => {
    fc.assert(
      fc.property(anyForm, inBuds, ([form, figures, seed], growth) => {
        const file = startFromForm(smallTree, form, figures, growth, seed);
        const read = parseTreeFile(writeTreeFile(file));
        expect(read).toEqual({ ok: true, file, notes: [] });
        expect(new Set(file.axes.map((axis) => axis.name)).size).toBe(file.axes.length);
      }),
      runs,
    );
  });

  it('has the trunk, limbs, laterals, spread and shoots asked for', () => {
    fc.assert(
      fc.property(anyForm, ([form, figures, seed]) => {
        const file = startFromForm(smallTree, form, figures, 'shoots', seed);
        const limbs = placed(file).filter(({ axis }) => axis.kind === 'scaffold');
        expect(limbs).toHaveLength(figures.limbs);
        const each = form === 'hard-pruned-vase' ? 2 ** (figures.laterals + 1) - 2 : figures.laterals;
        expect(kinds(file, 'lateral')).toHaveLength(figures.limbs * each);
        expect(kinds(file, 'shoot')).toHaveLength(figures.shoots);
        const heights = limbs.map(({ path }) => (path[0] as Vec3)[1]);
        const trunk = placed(file)[0] as PlacedAxis;
        if (limbs.length === 0) heights.push((trunk.path.at(-1) as Vec3)[1]);
        expect(Math.min(...heights)).toBeCloseTo(figures.trunkM, 2);
        const arms = form === 'cordon' || form === 'step-over' ? figures.limbs : 2;
        for (const { path } of limbs) {
          const [base, tip] = [path[0] as Vec3, path.at(-1) as Vec3];
          const reachM = Math.hypot(tip[0] - base[0], tip[2] - base[2]);
          expect(Math.abs(reachM - figures.spreadM / arms)).toBeLessThan(0.005);
        }
      }),
      runs,
    );
  });

  it('is never thicker where it leaves than the wood it leaves', () => {
    fc.assert(
      fc.property(anyForm, ([form, figures, seed]) => {
        const overM = placed(startFromForm(smallTree, form, figures, 'shoots', seed)).map(
          ({ axis, parent }) =>
            Math.max(
              axis.tipDiameterM - axis.baseDiameterM,
              parent === null ? 0 : axis.baseDiameterM - 2 * radiusAtM(parent, axis.atM),
            ),
        );
        expect(Math.max(...overM)).toBeLessThan(2e-4);
      }),
      runs,
    );
  });

  it('is the same again for the same seed, and bears its buds where its shoots would stand', () => {
    fc.assert(
      fc.property(anyForm, ([form, figures, seed]) => {
        const inLeaf = startFromForm(smallTree, form, figures, 'shoots', seed);
        expect(startFromForm(smallTree, form, figures, 'shoots', seed)).toEqual(inLeaf);
        const bare = startFromForm(smallTree, form, figures, 'buds', seed);
        const shoots = kinds(inLeaf, 'shoot').map(({ id, atM, parentId }) => ({ id, atM, on: parentId }));
        const buds = bare.axes.flatMap((axis) => axis.buds.map(({ id, atM }) => ({ id, atM, on: axis.id })));
        expect(buds.toSorted(byId)).toEqual(shoots.toSorted(byId));
        expect(bare.axes.map((axis) => ({ ...axis, buds: [] }))).toEqual(
          inLeaf.axes.filter((axis) => axis.kind !== 'shoot'),
        );
      }),
      { ...runs, numRuns: 20 },
    );
  });

  it('has wood that bends', () => {
    fc.assert(
      fc.property(anyForm, ([form, figures, seed]) => {
        const { axes } = startFromForm(smallTree, form, figures, 'shoots', seed);
        const detours = axes
          .filter(({ kind }) => kind !== 'trunk')
          .map((axis) => pathLengthM(axis.path) - length(chord(axis)));
        expect(Math.min(1, ...detours)).toBeGreaterThan(1e-6);
      }),
      { ...runs, numRuns: 20 },
    );
  });
});

const byId = (a: { readonly id: string }, b: { readonly id: string }) => (a.id < b.id ? -1 : 1);

describe('a tree started from a form', () => {
  it('stands where the open tree stands, under a name and id of its own', () => {
    const turned = { ...smallTree, standing: { ...smallTree.standing, turnedDeg: 70 } };
    const first = startFromForm(turned, 'fan', startFigures('fan'), 'shoots', 3);
    expect(first.site).toBe(smallTree.site);
    // A new sketch: nothing has been turned since.
    expect(first.standing).toEqual({ ...smallTree.standing, turnedDeg: 0 });
    expect(first.season).toBe(smallTree.season);
    expect(first).toMatchObject({ id: 'fan', name: 'Fan' });
    const again = startFromForm(first, 'fan', startFigures('fan'), 'shoots', 4);
    expect(startFromForm(again, 'fan', startFigures('fan'), 'shoots', 5).id).toBe('fan-3');
    expect(again.id).toBe('fan-2');
    expect(kinds(first, 'shoot').every((axis) => axis.grownIn === 2030)).toBe(true);
  });

  it.each([
    ['fan', true],
    ['cordon', true],
    ['step-over', true],
    ['open-vase', false],
    ['single-stem', false],
    ['hard-pruned-vase', false],
    ['bush', false],
  ] as const)('of the form %s is flat: %s', (form, isFlat) => {
    const figures = { ...startFigures(form), towardsDeg: 90 };
    const across = placed(startFromForm(smallTree, form, figures, 'shoots', 9))
      .filter(({ axis }) => axis.kind === 'scaffold' || axis.kind === 'lateral')
      .map(({ path }) => Math.abs((path.at(-1) as Vec3)[2]));
    expect(Math.max(...across) < 0.12).toBe(isFlat);
    expect(Math.max(...across) > 0.3 * figures.spreadM).toBe(!isFlat);
  });

  it('of the hard-pruned vase doubles its arms: 3, 6, 12, 24 heads', () => {
    const heads = [0, 1, 2, 3].map((laterals) => {
      const figures = { ...startFigures('hard-pruned-vase'), laterals };
      const { axes } = startFromForm(smallTree, 'hard-pruned-vase', figures, 'buds', 1);
      const forked = new Set(axes.map((axis) => axis.parentId));
      return axes.filter((axis) => axis.kind !== 'trunk' && !forked.has(axis.id)).length;
    });
    expect(heads).toEqual([3, 6, 12, 24]);
  });

  it('that is flat begins along the nearest wall in reach', () => {
    const wall = { kind: 'wall', heightM: 2, thicknessM: 0.3, reflectance: 0.3 } as const;
    const site = (surroundings: (typeof smallTree)['site']['surroundings']) => ({
      ...smallTree,
      site: { ...smallTree.site, surroundings },
    });
    const far = { ...wall, name: 'Far', from: [-3, 4], to: [3, 4] } as { name: string } & typeof wall & {
        from: [number, number];
        to: [number, number];
      };
    const near = { ...far, name: 'Near', from: [-1.2, -0.9], to: [2.8, 1.1] } as typeof far;
    expect(alongWallDeg(site([far]))).toBeNull();
    expect(alongWallDeg(site([far, near]))).toBeCloseTo(63.435, 3);
    expect(alongWallDeg(site([{ ...near, from: near.to, to: near.from }]))).toBeCloseTo(63.435, 3);
    expect(alongWallDeg(smallTree)).toBeNull();
  });

  it.each(formNames)('of the form %s as it is first shown has no fault that a plan would cut', (form) => {
    for (const [growth, seed] of [
      ['shoots', 1],
      ['buds', 1],
      ['shoots', 2],
    ] as const) {
      const file = startFromForm(smallTree, form, startFigures(form), growth, seed);
      const { cuts, remarks } = findFaults({ axes: file.axes }, stanceOf(file), figValues({}));
      expect([...cuts, ...remarks]).toEqual([]);
    }
  });

  it('is refused with figures beyond the sliders', () => {
    const figures = startFigures('cordon');
    expect(formFigureOutside('cordon', figures)).toBeNull();
    expect(formFigureOutside('cordon', { ...figures, limbs: 1.5 })).toBe('limbs');
    expect(formFigureOutside('cordon', { ...figures, trunkM: Number.NaN })).toBe('trunkM');
    expect(() => startFromForm(smallTree, 'cordon', { ...figures, spreadM: 40 }, 'shoots', 1)).toThrow(
      'startFromForm: spreadM must be 0.8 to 8, got 40',
    );
  });
});
