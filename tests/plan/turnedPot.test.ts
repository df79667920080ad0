import { describe, expect, it } from 'vitest';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { planInputOf } from '../../src/engine/planInput.ts';
import { growCanopy } from '../../src/growth/growCanopy.ts';
import type { CellLight } from '../../src/light/directions.ts';
import { exposure } from '../../src/light/exposure.ts';
import { leafTable } from '../../src/light/leafTable.ts';
import { nodeTable, type TableWave } from '../../src/light/nodeTable.ts';
import { cellLight } from '../../src/light/sky/cellLight.ts';
import { traceLeafWave } from '../../src/light/trace/leafWave.ts';
import { traceWave } from '../../src/light/trace/wave.ts';
import { type CanopyScene, canopyScene } from '../../src/plan/canopyScene.ts';
import { type TracedWave, type WaveTask, waveSteps } from '../../src/plan/canopyWave.ts';
import type { PlanInput } from '../../src/plan/input.ts';
import { fullLeafHeatGdd8 } from '../../src/plan/stages.ts';
import { seasonDates } from '../../src/season/seasonDates.ts';
import { sampleFile } from '../document/sampleFiles.ts';

/** The potted sample beside its wall, a hedge and a neighbour; turned so far, and turned every so many weeks. */
function fileOf(turnedDeg: number, quarterTurnEveryWeeks?: number): TreeFile {
  const file = sampleFile('potted-fig-in-leaf');
  const { surroundings } = file.site;
  return {
    ...file,
    site: {
      ...file.site,
      surroundings: [
        ...surroundings,
        {
          kind: 'hedge',
          name: 'Hedge',
          from: [1.4, -2],
          to: [1.1, 2],
          heightM: 1.9,
          thicknessM: 0.6,
          leafAreaDensityM2M3: 2.3,
        },
      ],
    },
    standing: {
      ...file.standing,
      turnedDeg,
      ...(quarterTurnEveryWeeks !== undefined && { quarterTurnEveryWeeks }),
    },
  };
}

function sceneOf(file: TreeFile): { input: PlanInput; scene: CanopyScene } {
  const input = planInputOf(file, { seed: 11 });
  const { tree, stance, values, seed } = input;
  const heatGdd8 = fullLeafHeatGdd8(input, seasonDates(input));
  const canopy = growCanopy({ tree, stance, values, heatGdd8, seed, gone: new Set() });
  return { input, scene: canopyScene(canopy, input) };
}

function traced<At extends WaveTask['at']>(at: At, scene: CanopyScene, wave: number): TracedWave<At> {
  const steps = waveSteps({ at, scene, wave });
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const startDeg = 20;
const { input, scene } = sceneOf(fileOf(startDeg, 3));

/** The rows of a table of one wave, direction by direction. */
const rowsOf = ({ passed, directions }: TableWave): number[][] => {
  const count = passed.length / directions.length;
  return directions.map((_, d) => Array.from(passed.subarray(d * count, (d + 1) * count)));
};

describe('a pot that is turned', () => {
  const wave = traced('nodes', scene, 2);
  const leafWave = traced('leaves', scene, 2);

  it('has each pose in about a quarter of the directions, drawn anew in each wave (seed 11)', () => {
    const counts = [0, 1, 2, 3].map((pose) => wave.directions.filter((d) => d.pose === pose).length);
    for (const count of counts) expect(count / wave.directions.length).toBeCloseTo(0.25, 1);
    const other = traced('nodes', scene, 3);
    expect(other.directions.map((d) => d.pose)).not.toEqual(wave.directions.map((d) => d.pose));
  });

  it.each([0, 1, 2, 3])('meets in pose %i what a pot that was put there meets', (pose) => {
    const put = sceneOf(fileOf(startDeg + 90 * pose)).scene;
    const { surfaces, receivers, ownerCount, group, leafCount: groupCount } = put;
    const directions = wave.directions.filter((d) => d.pose === pose);
    const there = traceWave({ surfaces, receivers, directions, ownerCount });
    const one = { ownerCount, receiverCount: receivers.length, seed: 0 };
    const expected = rowsOf(nodeTable({ ...one, waves: [there] }).waves[0] as TableWave);
    const got = rowsOf(nodeTable({ ...one, waves: [wave] }).waves[0] as TableWave).filter(
      (_, d) => wave.directions[d]?.pose === pose,
    );
    let differing = 0;
    got.forEach((row, d) => {
      row.forEach((value, r) => {
        // A ray within rounding of an edge may fall on its other side once all is turned.
        if (Math.abs(value - (expected[d]?.[r] ?? Number.NaN)) > 1e-6) differing++;
      });
    });
    expect(differing).toBeLessThanOrEqual(2);

    const { spacingM, seed } = { spacingM: 0.05, seed: 11 };
    const leafDirections = leafWave.directions.filter((d) => d.pose === pose);
    const leaves = { surfaces, group, groupCount, ownerCount, spacingM, seed, wave: 2 };
    const ledger = { ownerCount, groupCount, seed };
    const leavesThere = traceLeafWave({ ...leaves, directions: leafDirections });
    const mean = (table: TableWave): number =>
      table.passed.reduce((a, b) => a + b, 0) / table.directions.length;
    const meanThere = mean(leafTable({ ...ledger, waves: [leavesThere] }).waves[0] as TableWave);
    const all = leafTable({ ...ledger, waves: [leafWave] }).waves[0] as TableWave;
    const mine = rowsOf(all).filter((_, d) => all.directions[d]?.pose === pose);
    // The ground's rows are zone by zone.
    const meanHere = mine.flat().reduce((a, b) => a + b, 0) / leafDirections.length;
    // Other lattices over other boxes: the same light but for the sampling.
    expect(Math.abs(meanHere / meanThere - 1)).toBeLessThan(0.02);
  });

  it('has over the days of one pose the light of a pot that stands so', () => {
    const waves = (of: CanopyScene) => Array.from({ length: 12 }, (_, w) => traced('nodes', of, w));
    const group = new Int32Array(scene.receivers.length);
    const shareOf = (of: CanopyScene, light: CellLight) => {
      const { ownerCount, receivers, seed } = of;
      const ledger = { ownerCount, receiverCount: receivers.length, waves: waves(of), seed };
      return exposure(ledger, light, { count: 1, group })[0];
    };
    const lightOf = ({ site }: PlanInput): CellLight => {
      const { groundReflectance } = site;
      // The second three weeks after bud break on 14 April.
      const period = { from: '2026-05-05', to: '2026-05-25' };
      return cellLight({ site, groundReflectance, period, skyKind: 'uniform' });
    };
    expect(input.site.quarterTurns?.from).toBe('2026-04-14');
    const there = sceneOf(fileOf(startDeg + 90));
    const [got, expected] = [shareOf(scene, lightOf(input)), shareOf(there.scene, lightOf(there.input))];
    const error = Math.hypot(got?.standardError ?? NaN, expected?.standardError ?? NaN);
    expect(Math.abs((got?.share ?? NaN) - (expected?.share ?? NaN))).toBeLessThan(3 * error);
    expect(error).toBeLessThan(0.01);
  });
});
