import { describe, expect, it } from 'vitest';
import { growCanopy } from '../../src/growth/growCanopy.ts';
import { canopyReceivers, canopySurfaces } from '../../src/growth/scene.ts';
import { exposure } from '../../src/light/exposure.ts';
import { leafOptics } from '../../src/light/leafOptics.ts';
import { cellLight } from '../../src/light/sky/cellLight.ts';
import { waveDirections } from '../../src/light/sky/waveDirections.ts';
import { traceWave } from '../../src/light/trace/wave.ts';
import { applyCuts } from '../../src/plan/applyCuts.ts';
import { CropCount, cropModel, figToRipeGdd8 } from '../../src/plan/crop.ts';
import { figSites } from '../../src/plan/figSites.ts';
import { nodePlaces } from '../../src/plan/nodePlaces.ts';
import { planJob } from '../../src/plan/planJob.ts';
import { scoreCanopy } from '../../src/plan/score.ts';
import { lightStages } from '../../src/plan/stages.ts';
import { seasonLight } from '../../src/plan/tracedSeason.ts';
import { tryCuts } from '../../src/plan/trial.ts';
import { workYear } from '../../src/plan/windows.ts';
import { figValues } from '../../src/species/fig.ts';
import { axis, bud, drain, limb, planInput, straight, tree, trunk } from './smallTree.ts';

const buds = (name: string, count: number) =>
  Array.from({ length: count }, (_, i) => bud(`${name}${i}`, 0.09 + 0.053 * i, (137.5 * i) % 360));
const sketch = tree(
  trunk(),
  limb('east', 95, { path: straight(0.33, 95, 41), buds: buds('e', 5) }),
  limb('west', 268, { atM: 0.53, path: straight(0.36, 268, 43), buds: buds('w', 5) }),
  axis('dead-one', 'west', { atM: 0.2, path: straight(0.21, 350, 20), condition: 'dead' }),
  axis('soil', 'trunk', { kind: 'sucker', path: straight(0.57, 20, 78), buds: buds('s', 4) }),
);
const input = planInput(sketch, { values: figValues({ shootsPerScaffold: 3 }), bearsFirstCrop: false });
const { plan, trial } = drain(planJob(input));
const allIds = plan.cuts.map(({ id }) => id);

describe('tryCuts', () => {
  it('with every cut ticked is the plan', () => {
    expect(plan.cuts.length).toBeGreaterThan(5);
    expect(tryCuts(trial, allIds).score).toEqual(plan.score.plan);
  });

  it('scores the plan as a tree with its cuts made, grown and traced from nothing', () => {
    const after = applyCuts(input.tree, plan.cuts);
    const { season } = workYear(input);
    const { stance, values, seed, site } = input;
    const light = seasonLight(input, season);
    const stages = lightStages(input, season).map((stage) => {
      const { heatGdd8, name, period } = stage;
      const canopy = growCanopy({ tree: after, stance, values, heatGdd8, seed, gone: new Set() });
      const surfaces = canopySurfaces(canopy, leafOptics(values));
      const own = cellLight({ site, groundReflectance: 0, period, skyKind: 'uniform' });
      const seen = name === 'full leaf' ? light : own;
      const waves = (name === 'full leaf' ? [0, 1] : [0]).map((wave) =>
        traceWave({
          surfaces,
          receivers: canopyReceivers(canopy, { seed, wave }).slice(0, canopy.nodes.length),
          directions: waveDirections({ latitudeDeg: site.latitudeDeg, seed, wave })
            .filter(({ kind, cell }) => kind !== 'ground' && (seen[kind][cell] ?? 0) > 0)
            .filter((_, d) => d % 3 === wave),
          ownerCount: canopy.owners.length,
        }),
      );
      const ledger = {
        ownerCount: canopy.owners.length,
        receiverCount: canopy.nodes.length,
        waves,
        seed,
      };
      return { stage, canopy, ledger, nodeLight: exposure(ledger, own).map(({ share }) => share) };
    });
    const full = stages.find(({ stage }) => stage.name === 'full leaf') as (typeof stages)[0];
    const { canopy } = full;
    const keep = new Uint8Array(canopy.owners.length).fill(1);
    const crop = cropModel(input, season);
    const sites = figSites(stages, values, figToRipeGdd8(input), (bearing) => crop.ripeAt(bearing, 0));
    const fresh = scoreCanopy({
      canopy,
      places: nodePlaces(canopy),
      nodeLight: exposure(full.ledger, light).map(({ share }) => share),
      keep,
      crop: new CropCount(
        sites,
        stages.map(({ nodeLight }) => nodeLight),
        keep,
        crop,
      ).count(),
      firstCropFigs: 0,
      values,
    });
    expect(plan.score.plan.ripeFigs).toBeCloseTo(fresh.ripeFigs, 4);
    expect(plan.score.plan.meanLight).toBeCloseTo(fresh.meanLight, 6);
    expect(plan.score.plan.leafAreaM2).toBeCloseTo(fresh.leafAreaM2, 9);
    expect(plan.score.plan.shootCount).toBe(fresh.shootCount);
    expect(fresh.ripeFigs).toBeGreaterThan(1);
  });

  it('answers what each cut brings: the plan less the plan without it', () => {
    for (const cut of plan.cuts) {
      const without = tryCuts(
        trial,
        allIds.filter((id) => id !== cut.id),
      );
      expect(plan.score.plan.ripeFigs - without.score.ripeFigs).toBeCloseTo(cut.gain.figs, 9);
      for (const { id, shareGain } of cut.gain.lights) {
        const [now, before] = [tryCuts(trial, allIds), without].map((answer) =>
          answer.shoots.find((shoot) => shoot.id === id),
        );
        expect((now?.lightFraction ?? 0) - (before?.lightFraction ?? 0)).toBeCloseTo(shareGain, 9);
      }
    }
  });

  it('puts down to shade all that a shoot in open ground costs the others, and a part of it in a small pot', () => {
    const costs = (of: typeof plan) =>
      of.cuts.flatMap(({ reasons }) =>
        reasons.flatMap((reason) => (reason.rule === 'crowding' ? [reason] : [])),
      );
    const inGround = costs(plan);
    expect(inGround.length).toBeGreaterThan(3);
    for (const { figsForOthers, figsByShade } of inGround) expect(figsByShade).toBeCloseTo(figsForOthers, 9);
    const inPot = costs(drain(planJob({ ...input, potVolumeL: 6 })).plan);
    const sum = (key: 'figsForOthers' | 'figsByShade') => inPot.reduce((all, one) => all + one[key], 0);
    expect(sum('figsForOthers')).toBeGreaterThan(1.5 * sum('figsByShade'));
    expect(sum('figsByShade')).toBeGreaterThan(0);
  });

  it('tells the light at every node that stands, of which the light of a shoot is the mean', () => {
    const { shoots, nodes } = tryCuts(trial, allIds.slice(0, 3));
    expect(shoots.length).toBeGreaterThan(3);
    for (const { id, lightFraction } of shoots) {
      const shares = nodes.filter(({ shootId }) => shootId === id).map(({ share }) => share);
      expect(shares.reduce((sum, share) => sum + share, 0) / shares.length).toBeCloseTo(lightFraction, 9);
    }
    expect(new Set(nodes.map(({ shootId }) => shootId))).toEqual(new Set(shoots.map(({ id }) => id)));
  });

  it('puts back with a limb all that grows on it', () => {
    const soil = plan.cuts.find(({ target }) => target === 'soil');
    const without = tryCuts(
      trial,
      allIds.filter((id) => id !== soil?.id),
    );
    expect(without.score.shootCount).toBe(plan.score.plan.shootCount + 4);
  });

  it('does not depend on what was tried before', () => {
    const first = tryCuts(trial, allIds.slice(0, 3));
    tryCuts(trial, []);
    tryCuts(trial, allIds);
    expect(tryCuts(trial, allIds.slice(0, 3))).toEqual(first);
  });

  it('refuses a cut that the plan does not have', () => {
    expect(() => tryCuts(trial, ['tip:nothing'])).toThrow(/got tip:nothing/);
  });
});

describe('planJob', () => {
  it('gives the same plan for the same input', () => {
    expect(drain(planJob(input)).plan).toEqual(plan);
  });

  it('tells how far it is at once, in words, never going back', () => {
    const steps = [...planJob(input)];
    expect(steps[0]).toEqual({ done: 0, doing: 'Looking at the wood' });
    for (const [i, { done }] of steps.entries()) {
      expect(done).toBeGreaterThanOrEqual(steps[i - 1]?.done ?? 0);
      expect(done).toBeLessThanOrEqual(1);
    }
    expect(steps.length).toBeGreaterThan(20);
  });

  it('scores doing nothing on the tree as it stands', () => {
    expect(plan.score.doNothing.shootCount).toBe(14);
    expect(plan.score.doNothing.leafAreaM2).toBeGreaterThan(plan.score.plan.leafAreaM2);
  });

  it('plans a bare trunk without a word of light', () => {
    const { plan: empty } = drain(planJob(planInput(tree(trunk()))));
    expect(empty.cuts).toEqual([]);
    expect(empty.score.plan).toEqual(empty.score.doNothing);
    expect(empty.score.plan.meanLight).toBe(0);
  });
});
