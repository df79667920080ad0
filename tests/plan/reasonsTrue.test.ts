/**
 * Every number of every reason of the samples, computed again: light by another way through the record of rays, figs by formulas written
 * out anew from docs/model.md, lengths and angles from the sketch.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { planInputOf } from '../../src/engine/planInput.ts';
import { pathLengthM, pointAt } from '../../src/geometry/path.ts';
import { type PlacedAxis, placeTree } from '../../src/geometry/tree.ts';
import { angleBetweenDeg, distance, sub, type Vec3 } from '../../src/geometry/vec.ts';
import { elevationDeg } from '../../src/geometry/world.ts';
import { applyCuts } from '../../src/plan/applyCuts.ts';
import type { Cut, Reason } from '../../src/plan/cut.ts';
import type { PlanInput } from '../../src/plan/input.ts';
import { planJob } from '../../src/plan/planJob.ts';
import type { TrialContext } from '../../src/plan/trial.ts';
import { Stand } from './recount.ts';
import { drain } from './smallTree.ts';

function sample(name: string, rest: Partial<PlanInput> = {}): PlanInput {
  const parsed = parseTreeFile(readFileSync(`public/examples/${name}.json`, 'utf8'));
  if (!parsed.ok) throw new Error(`${parsed.where}: ${parsed.reason}`);
  return { ...planInputOf(parsed.file, { waves: 1, worlds: 0 }), ...rest };
}

const shares = (of: Stand, { traced }: TrialContext): readonly number[] =>
  traced.full.canopy.shoots.map((_, shoot) => {
    const on = [...traced.places.shootOf.entries()].filter(([, s]) => s === shoot).map(([node]) => node);
    return on.reduce((sum, node) => sum + (of.nodeLight[node] as number), 0) / on.length;
  });

function checkLight(cut: Cut, plan: Stand, without: Stand, context: TrialContext): void {
  const { traced, input } = context;
  const { shoots, nodes } = traced.full.canopy;
  const [inPlan, ifKept] = [shares(plan, context), shares(without, context)];
  const stands = (shoot: number): boolean => plan.keep[shoots[shoot]?.owner as number] === 1;
  expect(cut.gain.figs, 'figs').toBeCloseTo(plan.ripe - without.ripe + firstCropOf(cut), 6);
  expect(cut.ifKept.figs).toBeCloseTo(-cut.gain.figs, 9);
  expect(cut.gain.fruitingWoodM, 'wood').toBeCloseTo(plan.fruitingWoodM - without.fruitingWoodM, 6);
  for (const { id, name, shareGain } of cut.gain.lights) {
    const at = shoots.findIndex((shoot) => shoot.id === id);
    expect(shoots[at]?.name).toBe(name);
    expect(stands(at)).toBe(true);
    expect(shareGain, name).toBeCloseTo((inPlan[at] as number) - (ifKept[at] as number), 6);
  }
  const limit = input.values.fruitHalfAtFraction;
  const falls = [...shoots.keys()].filter(
    (i) => stands(i) && (inPlan[i] as number) >= limit && (ifKept[i] as number) < limit,
  );
  expect(new Set(cut.ifKept.fallBelow.map(({ id }) => id))).toEqual(new Set(falls.map((i) => shoots[i]?.id)));
  for (const shoot of cut.ifKept.fallBelow) {
    const at = shoots.findIndex(({ id }) => id === shoot.id);
    expect(shoot.share).toBeCloseTo(inPlan[at] as number, 6);
    expect(shoot.shareIfKept).toBeCloseTo(ifKept[at] as number, 6);
    const figsOn = (of: Stand): number =>
      of.siteRipe.reduce(
        (sum, figs, i) => (traced.sites.owner[i] === shoots[at]?.owner ? sum + figs : sum),
        0,
      );
    expect(shoot.figsLost).toBeCloseTo(figsOn(plan) - figsOn(without), 6);
  }
  const crowding = cut.reasons.find((reason) => reason.rule === 'crowding');
  if (crowding?.rule !== 'crowding') return;
  const goes = (owner: number): boolean => plan.keep[owner] === 0 && without.keep[owner] === 1;
  const own = [...nodes.keys()].filter((i) => goes(nodes[i]?.owner as number));
  expect(crowding.ownShare).toBeCloseTo(
    own.reduce((sum, i) => sum + (without.nodeLight[i] as number), 0) / own.length,
    6,
  );
  const siteOf = (test: (owner: number) => boolean): number[] =>
    [...traced.sites.owner.entries()].filter(([, owner]) => test(owner)).map(([i]) => i);
  const figsIfKept = siteOf(goes).reduce((sum, i) => sum + (without.siteRipe[i] as number), 0);
  expect(crowding.figsIfKept).toBeCloseTo(figsIfKept, 6);
  expect(crowding.figsForOthers).toBeCloseTo(plan.ripe - (without.ripe - figsIfKept), 6);
  const byShade = siteOf((owner) => plan.keep[owner] === 1).reduce((sum, i) => {
    const [now, then] = [plan.siteSet[i] as number, without.siteSet[i] as number];
    return now === 0 ? sum : sum + ((plan.siteRipe[i] as number) * (now - then)) / now;
  }, 0);
  expect(crowding.figsByShade).toBeCloseTo(byShade, 6);
}

/** First-crop figs that a cut of wood of last year costs the plan: none here but those of tips, whose reason says so. */
const firstCropOf = ({ reasons }: Cut): number =>
  reasons.reduce((sum, reason) => (reason.rule === 'tip' ? sum - reason.firstCropFigsLost : sum), 0);

/** Of reasons that stand in the sketch. */
class Sketch {
  readonly placed: ReadonlyMap<string, PlacedAxis>;
  readonly input: PlanInput;

  readonly cuts: readonly Cut[];

  constructor(input: PlanInput, cuts: readonly Cut[]) {
    this.input = input;
    this.cuts = cuts;
    this.placed = placeTree(input.tree, input.stance);
  }

  check(cut: Cut, reason: Reason): void {
    const axis = this.placed.get(cut.target) as PlacedAxis;
    switch (reason.rule) {
      case 'dead':
      case 'diseased':
      case 'damaged':
        return expect(axis.axis.condition).toBe(reason.rule);
      case 'sucker':
        return expect(reason.originHeightM).toBeCloseTo(
          Math.max(0, (axis.path[0] as Vec3)[1] - this.input.stance.foot[1]),
          9,
        );
      case 'water sprout':
        expect(reason.lengthM).toBeCloseTo(pathLengthM(axis.path), 9);
        return expect(reason.elevationDeg).toBeCloseTo(
          elevationDeg(sub(axis.path.at(-1) as Vec3, axis.path[0] as Vec3)),
          9,
        );
      case 'crossing':
        return this.checkCrossing(axis, reason);
      case 'narrow fork':
        return this.checkFork(axis, reason.angleDeg);
      case 'inward':
        return expect(reason.share).toBeCloseTo(this.inwardShare(axis), 6);
      case 'pair':
        return expect(this.keptGapsM(cut).some((gapM) => Math.abs(gapM - reason.gapM) < 1e-9)).toBe(true);
      case 'limb full':
        return this.checkRoom(reason);
      default:
    }
  }

  /** How near the tip comes to the trunk, over the radius of the crown as the rules before leave it. */
  private inwardShare(axis: PlacedAxis): number {
    const before = ['dead', 'diseased', 'damaged', 'sucker', 'crossing'];
    const made = this.cuts.filter(({ reasons }) => before.includes(reasons[0]?.rule ?? ''));
    const left = [...placeTree(applyCuts(this.input.tree, made), this.input.stance).values()];
    const trunk = left.find(({ parent }) => parent === null)?.path as readonly Vec3[];
    const fromLine = ([x, y, z]: Vec3): number => {
      const at = trunk.findIndex((point, i) => i > 0 && point[1] >= y);
      const [a, b] = at < 0 ? [trunk.at(-1), trunk.at(-1)] : [trunk[at - 1], trunk[at]];
      const [p, q] = [a as Vec3, b as Vec3];
      const share = q[1] === p[1] ? 0 : (y - p[1]) / (q[1] - p[1]);
      return Math.hypot(x - p[0] - share * (q[0] - p[0]), z - p[2] - share * (q[2] - p[2]));
    };
    const radiusM = Math.max(...left.flatMap(({ path }) => path.map(fromLine)));
    return fromLine(axis.path.at(-1) as Vec3) / radiusM;
  }

  private isCut(id: string): boolean {
    return this.cuts.some(({ target }) => target === id);
  }

  /** From the bud to the kept buds of its branch. */
  private keptGapsM({ target }: Cut): number[] {
    const on = this.input.tree.axes.find(({ buds }) => buds.some(({ id }) => id === target));
    const own = on?.buds.find(({ id }) => id === target);
    const kept = on?.buds.filter(({ id }) => !this.isCut(id)) ?? [];
    return kept.map(({ atM }) => Math.abs(atM - (own?.atM ?? Number.NaN)));
  }

  private checkRoom({ limb, kept, limit }: Extract<Reason, { rule: 'limb full' }>): void {
    const onLimb = [...this.placed.values()].filter((axis) => {
      for (let at: PlacedAxis | null = axis; at !== null; at = at.parent)
        if (at.axis.name === limb) return true;
      return false;
    });
    const woodM = onLimb.reduce((sum, { path }) => sum + pathLengthM(path), 0);
    const { shootsPerScaffold, shootPerWoodCm } = this.input.values;
    expect(limit).toBe(Math.max(shootsPerScaffold, Math.floor((100 * woodM) / shootPerWoodCm)));
    expect(kept).toBe(onLimb.flatMap(({ axis }) => axis.buds).filter(({ id }) => !this.isCut(id)).length);
  }

  /** All points of both, two millimetres apart: the barks come no nearer, and so near over that length of one of them. */
  private checkCrossing(goes: PlacedAxis, reason: Extract<Reason, { rule: 'crossing' }>): void {
    const stays = [...this.placed.values()].find(({ axis }) => axis.name === reason.other) as PlacedAxis;
    const stepM = 0.002;
    const points = (of: PlacedAxis) =>
      Array.from({ length: Math.floor(of.lengthM / stepM) + 1 }, (_, i) => {
        const { baseDiameterM: base, tipDiameterM: tip } = of.axis;
        const radiusM = (base + ((tip - base) * i * stepM) / of.lengthM) / 2;
        return { point: pointAt(of.path, i * stepM), radiusM };
      });
    const [a, b] = [points(goes), points(stays)];
    const gap = (p: (typeof a)[number], q: (typeof a)[number]): number =>
      distance(p.point, q.point) - p.radiusM - q.radiusM;
    const nearest = (p: (typeof a)[number], others: typeof a): number =>
      Math.min(...others.map((q) => gap(p, q)));
    const gaps = [a.map((p) => nearest(p, b)), b.map((q) => nearest(q, a))];
    const barkGapM = Math.max(0, Math.min(...(gaps[0] as number[])));
    expect(Math.abs(barkGapM - reason.barkGapM)).toBeLessThan(0.001);
    const overs = gaps.map((all) => stepM * all.filter((gapM) => gapM < reason.barkLimitM).length);
    expect(Math.min(...overs.map((overM) => Math.abs(overM - reason.overM)))).toBeLessThan(0.02);
  }

  private checkFork(axis: PlacedAxis, angleDeg: number): void {
    const { parent } = axis;
    if (parent === null) throw new Error('a fork has a parent');
    const from = axis.axis.atM;
    const own = sub(pointAt(axis.path, 0.1), axis.path[0] as Vec3);
    const onward = sub(pointAt(parent.path, from + 0.1), pointAt(parent.path, from));
    expect(angleDeg).toBeCloseTo(angleBetweenDeg(own, onward), 6);
  }
}

/** So that limbs are full. */
const tight = { ...sample('potted-fig-bud-break').values, shootsPerScaffold: 3, shootPerWoodCm: 65 };

const cases: readonly [string, PlanInput][] = [
  ['potted fig at bud break', sample('potted-fig-bud-break')],
  ['potted fig in leaf', sample('potted-fig-in-leaf')],
  ['old fig in the ground', sample('old-fig-in-ground')],
  ['young whip', sample('young-whip')],
  ['potted fig at bud break, with less room', sample('potted-fig-bud-break', { values: tight })],
  ['potted fig in winter, to be kept lower', sample('potted-fig-bud-break', { date: '2026-01-27' })],
];

const rulesSeen = new Set<string>();

describe.each(cases)('the reasons of the plan for the %s', (_, input) => {
  const kept =
    input.date === '2026-01-27'
      ? { ...input, values: { ...input.values, keptHeightM: 1.4, yourCallBelowShare: 0 } }
      : input;
  const { plan, trial } = drain(planJob(kept));
  const whole = new Stand(trial, plan.cuts);

  it('have the light and the figs of the record of rays', () => {
    expect(plan.cuts.length).toBeGreaterThan(0);
    expect(plan.score.plan.ripeFigs).toBeCloseTo(whole.ripe, 6);
    for (const cut of plan.cuts) {
      const without = new Stand(
        trial,
        plan.cuts.filter((other) => other !== cut),
      );
      checkLight(cut, whole, without, trial);
    }
  }, 180_000);

  it('have the lengths and angles of the sketch', () => {
    const sketch = new Sketch(kept, plan.cuts);
    expect(plan.cuts.every(({ reasons }) => reasons.length > 0)).toBe(true);
    for (const cut of plan.cuts) {
      for (const reason of cut.reasons) {
        rulesSeen.add(reason.rule);
        sketch.check(cut, reason);
      }
    }
  });
});

it('are of all kinds that a sample can have', () => {
  const wanted = [
    'dead',
    'diseased',
    'sucker',
    'crossing',
    'inward',
    'water sprout',
    'narrow fork',
    'crowding',
    'pair',
    'limb full',
  ];
  expect([...rulesSeen]).toEqual(expect.arrayContaining(wanted));
});
