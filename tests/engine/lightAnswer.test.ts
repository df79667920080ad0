/** What the light answer's figures owe to one another. */
import { beforeAll, describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import type { LightAnswer } from '../../src/engine/engine.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import { exampleText } from '../cli/stand.ts';

const read = parseTreeFile(exampleText('young-whip'));
if (!read.ok) throw new Error('lightAnswer: the sample is refused');
const whip: TreeFile = read.file;
const engine = createInPlaceEngine();
const period = { from: '2026-05-21', to: '2026-09-03' };

describe('the light of a young tree', () => {
  let answer: LightAnswer;
  beforeAll(async () => {
    answer = await engine.light(whip, { waves: 3, period }).result;
  });

  it('adds up over the hours to that of the day', () => {
    for (const { byHour, parMolM2Day } of answer.report.shoots) {
      const sum = byHour.reduce((total, { parMolM2 }) => total + parMolM2, 0);
      // Shares are of what the same rays bring from an open sky in the hour: a few boxes of the beam, three rays each.
      expect(Math.abs(sum / parMolM2Day - 1)).toBeLessThan(0.02);
      // Winter: the tree stands south of the equator.
      expect(byHour.map(({ solarHour }) => solarHour)).toEqual([6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17]);
    }
  });

  it('of one hour asked for is that of the hour in the whole answer', async () => {
    const { report } = await engine.light(whip, { waves: 3, period, solarHour: 15 }).result;
    expect(report.solarHour).toBe(15);
    report.shoots.forEach((shoot, s) => {
      const hour = answer.report.shoots[s]?.byHour.find(({ solarHour }) => solarHour === 15);
      expect(shoot.lightFraction).toBeCloseTo(hour?.lightFraction as number, 10);
      expect(shoot.parMolM2Day).toBeCloseTo(hour?.parMolM2 as number, 10);
      expect(shoot.sunHours).toBeLessThanOrEqual(1 + 1e-9);
      expect(shoot.byHour).toHaveLength(1);
    });
  });

  it('gives each shoot the mean of its nodes, and no node more sun or sky than the open has', () => {
    const { report, nodes } = answer;
    for (const shoot of report.shoots) {
      const own = nodes.filter(({ shootId }) => shootId === shoot.id);
      const mean = (of: (node: (typeof own)[number]) => number) =>
        own.reduce((sum, node) => sum + of(node), 0) / own.length;
      expect(shoot.lightFraction).toBeCloseTo(
        mean(({ share }) => share),
        10,
      );
      expect(shoot.heightM).toBeCloseTo(
        mean(({ heightM }) => heightM),
        10,
      );
      expect(shoot.sunHours).toBeCloseTo(
        mean(({ sunHours }) => sunHours),
        10,
      );
      expect(shoot.openSky.solidAngle).toBeCloseTo(
        mean(({ openSky }) => openSky.solidAngle),
        10,
      );
    }
    for (const { sunHours, openSky, heightM } of nodes) {
      expect(sunHours).toBeLessThanOrEqual(report.dayLengthH);
      expect(Math.max(openSky.solidAngle, openSky.cosine)).toBeLessThanOrEqual(1);
      expect(heightM).toBeGreaterThan(0);
    }
  });

  it('has hours of sun near those of the day strip, whose sun is not blurred, on the day in the middle', async () => {
    const date = '2026-06-20';
    const { report } = await engine.light(whip, { waves: 8, period: { from: date, to: date } }).result;
    const day = await engine.look(whip, { ask: 'day', date }).result;
    expect(day.report.dayLengthH).toBeCloseTo(report.dayLengthH, 2);
    const total = (shoots: readonly { readonly sunHours: number }[]) =>
      shoots.reduce((sum, { sunHours }) => sum + sunHours, 0) / shoots.length;
    // 21 shoots of some 15 nodes: the blurred boxes differ node by node, hardly in the mean.
    expect(Math.abs(total(report.shoots) / total(day.report.shoots) - 1)).toBeLessThan(0.03);
  });

  it('tells its thresholds with their sources, and which of them the grower has set', async () => {
    const { thresholds } = answer.report;
    expect(thresholds.fruitingLight).toMatchObject({ share: 0.27, isSet: false });
    expect(thresholds.saturation.source).toContain('Amano');
    const mine = { ...whip, settings: { ...whip.settings, fruitHalfAtFraction: 0.31 } };
    const { report } = await engine.light(mine, { waves: 2, period }).result;
    expect(report.thresholds.deepShade).toMatchObject({ share: 0.155, isSet: true });
    expect(report.thresholds.saturation.isSet).toBe(false);
  });
});

describe('the light on single leaves', () => {
  it('comes, weighed by their area, to that of their shoot and to the sum of its parts', async () => {
    const { report, leaves, nodes } = await engine.light(whip, { waves: 2, period }).result;
    expect(leaves.map(({ shootId, node }) => [shootId, node])).toEqual(
      nodes.map(({ shootId, node }) => [shootId, node]),
    );
    for (const { id, leafLightFraction, leafParts } of report.shoots) {
      const own = leaves.filter(({ shootId }) => shootId === id).map(({ share }) => share);
      expect(leafLightFraction).toBeGreaterThan(Math.min(...own));
      expect(leafLightFraction).toBeLessThan(Math.max(...own));
      const { beam, sky, ground, transmitted, scattered } = leafParts;
      expect(beam + sky + ground + transmitted + scattered).toBeCloseTo(leafLightFraction, 9);
    }
    expect(leaves.every(({ share, standardError }) => share > 0 && standardError > 0)).toBe(true);
  });
});
