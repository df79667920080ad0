import { describe, expect, it } from 'vitest';
import { canopyScene } from '../../../src/plan/canopyScene.ts';
import { waveSteps } from '../../../src/plan/canopyWave.ts';
import { findWork } from '../../../src/plan/findWork.ts';
import { lightCurve } from '../../../src/plan/lightResponse.ts';
import { type TracedStage, untracedSeason } from '../../../src/plan/tracedSeason.ts';
import { trialContext, tryThese } from '../../../src/plan/trial.ts';
import { worldSteps } from '../../../src/plan/worlds/judgeWorld.ts';
import { worldInput, yearSpread } from '../../../src/plan/worlds/worldInput.ts';
import { dayNumber } from '../../../src/season/calendar.ts';
import { type FigParameterName, figParameters } from '../../../src/species/fig.ts';
import { bud, drain, limb, planInput, tree, trunk } from '../smallTree.ts';

const budsOn = (id: string) => [0.31, 0.47, 0.62, 0.8].map((atM, i) => bud(`${id}${i}`, atM, 131 * i));
const input = planInput(
  tree(trunk(), limb('east', 93, { buds: budsOn('e') }), limb('west', 248, { buds: budsOn('w') })),
  { potVolumeL: 23 },
);
const { year, seasonYear, choice } = drain(findWork(input));
const { season, stage } = year;
const seed = 29;
const worlds = Array.from({ length: 300 }, (_, number) =>
  worldInput(input, season.budBreakOn, { number, seed }),
);

describe('the figures of a world', () => {
  it('stay within their published ranges, and the light curve rises', () => {
    for (const { input: there } of worlds) {
      for (const [name, value] of Object.entries(there.values)) {
        const { min, max } = figParameters[name as FigParameterName];
        // R of the shared vigour is moved beyond its range on purpose: it "may be wrong by half".
        if (name === 'balancedShootLeafAreaM2') continue;
        expect(value, name).toBeGreaterThanOrEqual(min);
        expect(value, name).toBeLessThanOrEqual(max);
      }
      expect(() => lightCurve(there.values)).not.toThrow();
    }
  });

  it('change the heat of the season by their warmth on each of its days, as reckoned by hand', () => {
    const on = season.ripeningEndsOn;
    const days = dayNumber(on) - dayNumber(season.budBreakOn);
    let most = 0;
    for (const { input: there, season: then } of worlds) {
      const warmerC = there.site.climate.meanC[6] - input.site.climate.meanC[6];
      most = Math.max(most, Math.abs(warmerC));
      // All days of this season are warmer than the base by more than the 1.6 degrees that a world may be colder.
      expect(then.heat.sumAt(on) - season.heat.sumAt(on)).toBeCloseTo(warmerC * days, 6);
    }
    expect(most).toBeCloseTo(2 * yearSpread.seasonC, 9);
  });

  it('keep what the sky gives and what the sun gives apart', () => {
    const { light } = untracedSeason(input, season, new Set(), []);
    for (const { lightOf } of worlds.slice(0, 20)) {
      const there = lightOf(light);
      expect(there.openDiffuseParMolM2Day).toBe(light.openDiffuseParMolM2Day);
      expect(there.openSkyParMolM2Day).toBeCloseTo(
        there.openBeamParMolM2Day + there.openDiffuseParMolM2Day,
        9,
      );
      const more = there.openBeamParMolM2Day / light.openBeamParMolM2Day;
      expect(Math.abs(more - 1)).toBeLessThanOrEqual(2 * yearSpread.beamShare + 1e-9);
      expect(there.beam[200] ?? Number.NaN).toBeCloseTo(more * (light.beam[200] as number), 9);
    }
  });
});

describe('what a plan is worth in a world', () => {
  const taken = ['e1', 'w1', 'w2'];
  const nominal = untracedSeason(input, season, new Set(taken), []);
  const lights = {
    season: nominal.light,
    stages: nominal.stages.map((one) => ({ name: one.stage.name, light: one.light })),
  };

  it.each([3, 4])('is what the score of the plan finds on the same rays there, world %i', (world) => {
    const found = drain(
      worldSteps({
        at: 'world',
        input,
        world,
        budBreakOn: season.budBreakOn,
        stage,
        lights,
        settled: [],
        free: choice.free.map(({ id }) => id),
        taken,
        rivals: taken.map(() => null),
        withNothing: true,
        every: 5,
      }),
    );
    const there = worldInput(input, season.budBreakOn, { number: world, seed: input.leafSeed });
    const figs = (without: readonly string[]): number => {
      const known = new Map<string, (typeof lights)['season']>(
        lights.stages.map(({ name, light }) => [name, there.lightOf(light)]),
      );
      const grown = untracedSeason(there.input, there.season, new Set(without), [], (_, of) => {
        return known.get(of) ?? there.lightOf(lights.season);
      });
      const stages = grown.stages.map((one): TracedStage => {
        const onlyFor = one === grown.full ? grown.light : one.light;
        const scene = canopyScene(one.canopy, there.input, one.asked);
        const coarse = { every: 5, from: world % 5 };
        const wave = drain(waveSteps({ at: 'nodes', scene, wave: 0, onlyFor, coarse }));
        return { ...one, ledger: { ...one.ledger, waves: [wave] } };
      });
      const full = stages[grown.stages.indexOf(grown.full)] as TracedStage;
      const cuts = without.map((target) => ({ id: target, kind: 'rub off bud', target, atM: 0 }) as const);
      const context = trialContext({ ...grown, stages, full }, cuts, there.input, seasonYear);
      return tryThese(context, cuts).score.ripeFigs;
    };
    expect(found.planFigs).toBeGreaterThan(1);
    expect(found.planFigs).toBeCloseTo(figs(taken), 6);
    expect(found.nothingFigs).toBeCloseTo(figs([]), 6);
    expect(found.nothingFigs).not.toBeCloseTo(found.planFigs, 2);
  });
});
