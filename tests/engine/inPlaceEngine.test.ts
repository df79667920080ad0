/** The real engine with real trees: what its answers owe to one another. */
import { MessageChannel } from 'node:worker_threads';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { Cancelled, type Engine } from '../../src/engine/engine.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import type { Port } from '../../src/engine/messages.ts';
import { createRemoteEngine } from '../../src/engine/remoteEngine.ts';
import { serve } from '../../src/engine/serve.ts';
import type { Score } from '../../src/plan/score.ts';
import { daysInMonth } from '../../src/season/calendar.ts';
import { exampleText } from '../cli/stand.ts';

function sample(name: string): TreeFile {
  const read = parseTreeFile(exampleText(name));
  if (!read.ok) throw new Error(`sample: ${name} is refused, got ${read.reason}`);
  return read.file;
}

const whip = sample('young-whip');
const samples = ['potted-fig-bud-break', 'potted-fig-in-leaf', 'old-fig-in-ground', 'young-whip'];

/** Rays alike are summed in another order for other sets of cuts: the last digits of a sum may differ. */
function expectAlike(score: Score, other: Score): void {
  for (const [what, value] of Object.entries(score))
    expect(value).toBeCloseTo(other[what as keyof Score], 10);
}

describe.each(samples)('trying the cuts of a plan for %s', { timeout: 120_000 }, (name) => {
  it('gives the score of doing nothing with none ticked, that of the plan with all, something between with half', async () => {
    const engine = createInPlaceEngine();
    const { cuts, score } = await engine.plan(sample(name), { worlds: 0, waves: 2, seed: 7 }).result;
    expect(cuts.length).toBeGreaterThan(1);
    const none = await engine.tryCuts([]).result;
    expectAlike(none.score, score.doNothing);
    const ids = cuts.map(({ id }) => id);
    const all = await engine.tryCuts(ids).result;
    expect(all.score).toEqual(score.plan);
    expect(all.shoots).toHaveLength(score.plan.shootCount);
    const half = await engine.tryCuts(ids.slice(0, ids.length / 2)).result;
    expect(half.score.shootCount).toBeLessThan(score.doNothing.shootCount);
    expect(half.score.shootCount).toBeGreaterThan(score.plan.shootCount);
  });
});

describe('light by month', () => {
  it('has a month that the period touches in two years once, as the mean over its days', async () => {
    const engine = createInPlaceEngine();
    const over = async (from: string, to: string) =>
      (await engine.light(whip, { waves: 2, period: { from, to } }).result).report.shoots;
    const year = await over('2026-07-11', '2027-07-10');
    const [first, second] = [await over('2026-07-11', '2026-07-31'), await over('2027-07-01', '2027-07-10')];
    for (const [s, { byMonth }] of year.entries()) {
      expect(byMonth.map(({ month }) => month)).toEqual([7, 8, 9, 10, 11, 12, 1, 2, 3, 4, 5, 6]);
      const [a, b] = [first[s]?.parMolM2Day as number, second[s]?.parMolM2Day as number];
      expect(byMonth[0]?.parMolM2Day).toBeCloseTo((21 * a + 10 * b) / daysInMonth('2027-07-01'), 10);
    }
  });

  it('adds up to the light of the period', async () => {
    const period = { from: '2026-10-01', to: '2026-11-30' };
    const { report } = await createInPlaceEngine().light(whip, { waves: 2, period }).result;
    for (const { byMonth, parMolM2Day, lightFraction } of report.shoots) {
      const sum = 31 * (byMonth[0]?.parMolM2Day as number) + 30 * (byMonth[1]?.parMolM2Day as number);
      // Shares are taken of what the same rays bring from an open sky, which differs a little from month to month.
      expect(Math.abs(parMolM2Day / (sum / 61) - 1)).toBeLessThan(1e-3);
      expect(parMolM2Day).toBeCloseTo(lightFraction * report.openSkyParMolM2Day, 10);
    }
  });
});

describe('light under another sky', () => {
  it('is weighed anew from the same rays: a clear day is brighter, and each sky shares its light out in its own way', async () => {
    const engine = createInPlaceEngine();
    const period = { from: '2026-07-11', to: '2026-07-11' };
    const under = async (options: object) =>
      (await engine.light(whip, { waves: 2, period, ...options }).result).report;
    const [normal, clear] = [await under({}), await under({ weather: 'clear', sky: 12 })];
    expect([normal.weather, normal.sky, clear.weather, clear.sky]).toEqual([
      'normal',
      'uniform',
      'clear',
      12,
    ]);
    expect(clear.openSkyParMolM2Day).toBeGreaterThan(1.1 * normal.openSkyParMolM2Day);
    const overcast = await under({ sky: 'overcast' });
    expect(overcast.openSkyParMolM2Day).toBe(normal.openSkyParMolM2Day);
    expect(overcast.rays).toBe(normal.rays);
    expect(overcast.shoots.map((shoot) => shoot.parts.sky)).not.toEqual(
      normal.shoots.map((shoot) => shoot.parts.sky),
    );
    for (const { parts, lightFraction } of clear.shoots) {
      const sum = parts.beam + parts.sky + parts.ground + parts.transmitted + parts.scattered;
      expect(sum).toBeCloseTo(lightFraction, 10);
    }
    const beamOf = ({ shoots }: typeof clear): number =>
      shoots.reduce((sum, { parts }) => sum + parts.beam, 0);
    expect(beamOf(clear)).toBeGreaterThan(1.1 * beamOf(normal));
  });
});

describe('light after a change', () => {
  const { site } = whip;
  const warmer = site.climate.meanC.map((c) => c + 0.7) as typeof site.climate.meanC;
  const clearer = { ...site.climate, clearness: site.climate.meanC.map(() => 0.61) as typeof warmer };
  const weighed: readonly Partial<TreeFile['site']>[] = [
    { climate: { ...site.climate, meanC: warmer } },
    { climate: clearer },
    { frost: null },
    { groundReflectance: 0.43 },
    { skyline: { reflectance: 0.1, points: [{ bearingDeg: 21, heightDeg: 17 }] } },
    { slope: { slopeDeg: 14, fallsToDeg: 203 } },
    { cover: { name: 'Net', passedFraction: 0.63, diffusingFraction: 0.2, dates: null } },
  ];

  it('of weather, frost, ground, skyline, slope or cover is weighed from the same rays, and equals a fresh trace', async () => {
    const engine = createInPlaceEngine();
    await engine.light(whip, { waves: 2 }).result;
    const ask = async (change: Partial<TreeFile['site']>) => {
      const said = new Set<string>();
      const changed = { ...whip, site: { ...site, ...change } };
      const answer = await engine.light(changed, { waves: 2 }, ({ doing }) => said.add(doing)).result;
      expect(said).toContain('Weighing the light');
      expect(said).not.toContain('Growing the leaves');
      return { changed, answer };
    };
    for (const change of weighed) await ask(change);
    const { changed, answer } = await ask(Object.assign({}, ...weighed) as Partial<TreeFile['site']>);
    expect(answer).toEqual(await createInPlaceEngine().light(changed, { waves: 2 }).result);
  });

  it('of what the grower marked to stay or to go is none: no ray is followed', async () => {
    const engine = createInPlaceEngine();
    const before = await engine.light(whip, { waves: 2 }).result;
    const axes = whip.axes.map((axis) => ({
      ...axis,
      pin: 'keep' as const,
      buds: axis.buds.map((bud, i) => (i === 3 ? { ...bud, pin: 'remove' as const } : bud)),
    }));
    const said = new Set<string>();
    const after = await engine.light({ ...whip, axes }, { waves: 2 }, ({ doing }) => said.add(doing)).result;
    expect(said).not.toContain('Growing the leaves');
    expect(after).toEqual(before);
  });

  it('of the limits of the classes follows no ray either, and equals a fresh trace', async () => {
    const engine = createInPlaceEngine();
    await engine.light(whip, { waves: 2 }).result;
    const limited = {
      ...whip,
      settings: { ...whip.settings, fruitHalfAtFraction: 0.2, fruitFullFromFraction: 0.41 },
    };
    const said = new Set<string>();
    const after = await engine.light(limited, { waves: 2 }, ({ doing }) => said.add(doing)).result;
    expect(said).not.toContain('Growing the leaves');
    expect(after).toEqual(await createInPlaceEngine().light(limited, { waves: 2 }).result);
  });

  it('of a wall is traced anew', async () => {
    const wall = { kind: 'wall', name: 'Wall', heightM: 2.3, thicknessM: 0.2, reflectance: 0.3 } as const;
    const surroundings: TreeFile['site']['surroundings'] = [{ ...wall, from: [-3, 1.7], to: [3, 1.9] }];
    const walled: TreeFile = { ...whip, site: { ...site, surroundings } };
    const engine = createInPlaceEngine();
    const open = await engine.light(whip, { waves: 2 }).result;
    const shaded = await engine.light(walled, { waves: 2 }).result;
    expect(shaded).toEqual(await createInPlaceEngine().light(walled, { waves: 2 }).result);
    expect(shaded.report.shoots).not.toEqual(open.report.shoots);
  });
});

describe('several calls', () => {
  it('keep apart, and the cuts tried are those of the plan asked for last, whichever is done first', async () => {
    const engine = createInPlaceEngine();
    const slow = engine.plan(sample('potted-fig-in-leaf'), { worlds: 0, waves: 4 });
    const quick = engine.plan(whip, { worlds: 0, waves: 2 });
    const light = engine.light(whip, { waves: 2 });
    const [slowPlan, quickPlan, { report }] = await Promise.all([slow.result, quick.result, light.result]);
    const alone = await createInPlaceEngine().plan(whip, { worlds: 0, waves: 2 }).result;
    expect(quickPlan).toEqual(alone);
    expect(report.shoots).toHaveLength(21);
    expect(slowPlan.cuts.length).toBeGreaterThan(0);
    const tried = await engine.tryCuts(quickPlan.cuts.map(({ id }) => id)).result;
    expect(tried.score).toEqual(quickPlan.score.plan);
  });

  it('end when the engine is disposed of, and nothing is kept', async () => {
    const engine = createInPlaceEngine();
    const running = [engine.light(whip), engine.plan(whip)];
    engine.dispose();
    for (const { result } of running) await expect(result).rejects.toBeInstanceOf(Cancelled);
    await expect(engine.tryCuts([]).result).rejects.toThrow('no plan has been made yet');
  });
});

describe('a cancel', () => {
  const across = (inner: Engine): [Engine, () => void] => {
    const { port1, port2 } = new MessageChannel();
    serve(port2 as unknown as Port, inner);
    return [createRemoteEngine(port1 as unknown as Port, () => {}), () => port1.close()];
  };

  it.each(['light', 'plan'] as const)('stops %s for good, soon, also across a port', async (ask) => {
    const [engine, close] = across(createInPlaceEngine());
    let steps = 0;
    const running = engine[ask](sample('old-fig-in-ground'), { waves: 64 }, () => {
      if (++steps === 5) running.cancel();
    });
    await expect(running.result).rejects.toBeInstanceOf(Cancelled);
    const after = steps;
    await new Promise((resolve) => setTimeout(resolve, 120));
    expect(steps).toBe(after);
    const { report } = await engine.light(whip, { waves: 2 }).result;
    expect(report.shoots).toHaveLength(21);
    close();
  });

  it('brings a fault of the work across a port as words', async () => {
    const [engine, close] = across(createInPlaceEngine());
    await expect(engine.tryCuts(['remove:nothing']).result).rejects.toThrow('no plan has been made yet');
    await engine.plan(whip, { worlds: 0, waves: 2 }).result;
    await expect(engine.tryCuts(['remove:nothing']).result).rejects.toThrow('got remove:nothing');
    close();
  });
});
