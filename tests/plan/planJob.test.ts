import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { planInputOf } from '../../src/engine/planInput.ts';
import type { AxisKind, Condition } from '../../src/geometry/tree.ts';
import type { PlanInput } from '../../src/plan/input.ts';
import { type PlanResult, planJob } from '../../src/plan/planJob.ts';
import { placeText, reasonText, whatText } from '../../src/plan/words.ts';
import type { Monthly } from '../../src/season/site.ts';
import { drain } from './smallTree.ts';

const waves = 2;

function sample(name: string): PlanInput {
  const parsed = parseTreeFile(readFileSync(`public/examples/${name}.json`, 'utf8'));
  if (!parsed.ok) throw new Error(`${parsed.where}: ${parsed.reason}`);
  return planInputOf(parsed.file, { waves, worlds: 0 });
}

const cutIds = ({ plan }: PlanResult, kind: string): string[] =>
  plan.cuts.filter((cut) => cut.kind === kind).map(({ target }) => target);

describe('the plan for the potted fig at bud break', () => {
  const input = sample('potted-fig-bud-break');
  const budCount = input.tree.axes.reduce((sum, axis) => sum + axis.buds.length, 0);
  const result = drain(planJob(input));
  const { plan } = result;

  it('rubs off two thirds of the buds and cuts no wood: 12 to 30 shoots are kept on a tree of this size (trials of 2005, common practice)', () => {
    expect(budCount).toBeGreaterThanOrEqual(50);
    const rubbed = cutIds(result, 'rub off bud').length;
    expect(budCount - rubbed).toBeGreaterThanOrEqual(12);
    expect(budCount - rubbed).toBeLessThanOrEqual(30);
    expect(plan.cuts).toHaveLength(rubbed);
  });

  it('ripens more figs than doing nothing, on fewer shoots with more of their wood in fruiting light and none in deep shade', () => {
    const { doNothing, plan: thinned } = plan.score;
    expect(thinned.ripeFigs).toBeGreaterThan(doNothing.ripeFigs);
    expect(thinned.fruitingWoodM / thinned.shootCount).toBeGreaterThan(
      2 * (doNothing.fruitingWoodM / doNothing.shootCount),
    );
    expect(thinned.deepShadeCount).toBeLessThanOrEqual(doNothing.deepShadeCount);
    expect(thinned.shootCount).toBe(budCount - plan.cuts.length);
    expect(thinned.firstCropFigs).toBe(doNothing.firstCropFigs);
  });

  it('leaves a shoot on every branch that had one', () => {
    const gone = new Set(cutIds(result, 'rub off bud'));
    const withBuds = input.tree.axes.filter((axis) => axis.buds.length > 0);
    const bare = withBuds.filter((axis) => axis.buds.every(({ id }) => gone.has(id)));
    expect(withBuds.length).toBeGreaterThan(10);
    expect(bare.map(({ id }) => id)).toEqual([]);
  });

  it('says where and why in whole sentences without ids', () => {
    for (const cut of plan.cuts) {
      const text = [whatText(cut), placeText(cut, 'metric', input.viewpoint)].join(' ');
      expect(text).not.toContain(cut.target);
      expect(cut.reasons.map((reason) => reasonText(reason, 'us')).join(' ')).not.toMatch(/NaN|undefined/);
      expect(cut.reasons[0]?.rule).toBe('crowding');
      expect(cut.gain.lights.length).toBeLessThanOrEqual(3);
    }
    expect(new Set(plan.cuts.map(({ id }) => id)).size).toBe(plan.cuts.length);
  });

  it('never overrules a pin: kept buds stay, removed ones go', { timeout: 60_000 }, () => {
    const [first, second] = cutIds(result, 'rub off bud');
    const kept = input.tree.axes
      .flatMap((axis) => axis.buds)
      .find(({ id }) => !cutIds(result, 'rub off bud').includes(id));
    const pinOf = (id: string) =>
      id === first || id === second ? 'keep' : id === kept?.id ? 'remove' : null;
    const axes = input.tree.axes.map((axis) => ({
      ...axis,
      buds: axis.buds.map((bud) => ({ ...bud, pin: pinOf(bud.id) }) as const),
    }));
    const rubbed = cutIds(drain(planJob({ ...input, tree: { axes }, waves: 2 })), 'rub off bud');
    expect(rubbed).not.toContain(first);
    expect(rubbed).not.toContain(second);
    expect(rubbed).toContain(kept?.id);
  });
});

describe('the plan for the potted fig in leaf', () => {
  const input = sample('potted-fig-in-leaf');
  const { plan } = drain(planJob(input));

  it('thins shoots without taking more than a third of the leaves', () => {
    const { doNothing, plan: thinned } = plan.score;
    expect(plan.cuts.length).toBeGreaterThan(3);
    expect(plan.cuts.every(({ kind }) => kind === 'remove')).toBe(true);
    expect(thinned.leafAreaM2 / doNothing.leafAreaM2).toBeGreaterThanOrEqual(
      1 - input.values.removedShareStopFraction,
    );
    expect(thinned.meanLight).toBeGreaterThan(doNothing.meanLight);
    expect(thinned.ripeFigs).toBeGreaterThan(doNothing.ripeFigs);
  });
});

describe('the plan for the old fig in the ground', () => {
  const { plan } = drain(planJob(sample('old-fig-in-ground')));
  const rulesOf = (rule: string): string[] =>
    plan.cuts
      .filter(({ reasons }) => reasons.some((reason) => reason.rule === rule))
      .map(({ target }) => target);

  it('finds every fault that the tree has', () => {
    expect(rulesOf('dead')).toEqual(['east-1']);
    expect(rulesOf('diseased')).toEqual(['south-west-3']);
    expect(rulesOf('sucker')).toEqual(['sucker-1', 'sucker-2', 'sucker-3']);
    expect(rulesOf('crossing')).toHaveLength(1);
    expect(['north-west-rubbing', 'south-west-2']).toContain(rulesOf('crossing')[0]);
    expect(rulesOf('inward')).toEqual(['water-sprout']);
    expect(rulesOf('water sprout')).toEqual(['water-sprout']);
    expect(rulesOf('narrow fork')).toEqual(['north-west-fork']);
  });

  it('lists the work in its order and says what it costs', () => {
    const order = ['dead', 'diseased', 'sucker', 'crossing', 'inward', 'narrow fork', 'crowding'];
    const places = plan.cuts.map(({ reasons }) => order.indexOf(reasons[0]?.rule ?? ''));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(plan.remarks.join(' ')).toContain('figs fewer than doing nothing');
  });
});

describe('the plan in winter', () => {
  const plan = drain(planJob({ ...sample('potted-fig-bud-break'), date: '2026-01-27' })).plan;

  it('rubs off nothing, says when to, and that no tip needs cutting', () => {
    expect(plan.cuts).toEqual([]);
    expect(plan.remarks).toContain('No tip needs cutting.');
    expect(plan.remarks.join(' ')).toContain('plan again then');
    expect(plan.score.plan).toEqual(plan.score.doNothing);
  });
});

describe('the plan where the season is too short for any fig', () => {
  const whip = sample('young-whip');
  const colder = (months: Monthly): Monthly => months.map((c) => c - 7) as unknown as Monthly;
  const { climate } = whip.site;
  const cold = { ...climate, meanC: colder(climate.meanC), minC: colder(climate.minC) };
  // Buds stand 5 cm apart on the whip: spaced for room, most would go whatever they bear.
  const values = { ...whip.values, keptShootSpacingCm: 8 };
  const { plan } = drain(planJob({ ...whip, values, site: { ...whip.site, climate: cold } }));

  it('rubs off no shoot for bearing nothing, and says that the season is short', () => {
    expect(plan.score.doNothing.ripeFigs).toBeLessThan(1);
    expect(plan.score.plan.shootCount).toBeGreaterThan(5);
    expect(plan.remarks.join(' ')).toContain('the season here ends before most figs of this kind ripen');
  });
});

describe('what is said of a tree past mending', () => {
  const old = sample('old-fig-in-ground');
  const marked = (kind: AxisKind, condition: Condition): string => {
    const axes = old.tree.axes.map((axis) => (axis.kind === kind ? { ...axis, condition } : axis));
    return drain(planJob({ ...old, tree: { axes } })).plan.remarks.join(' ');
  };

  it('names the state of the trunk', () => {
    expect(marked('trunk', 'damaged')).toContain('The trunk itself is marked as damaged');
  });

  it('speaks of no leaves that stay when sick wood takes more than a year may', () => {
    const remarks = marked('scaffold', 'diseased');
    expect(remarks).toContain('It goes at once all the same');
    expect(remarks).not.toMatch(/[Ss]pread it over/);
    expect(remarks).not.toContain('of the leaves stay');
  });
});
