import { describe, expect, it } from 'vitest';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { finishJob } from '../../src/engine/job.ts';
import { lightJob } from '../../src/engine/lightJob.ts';
import { sampleFile } from '../document/sampleFiles.ts';

/** The potted sample by its wall of another paleness. */
function fileWith(reflectance: number, wallsThrowLight = true): TreeFile {
  const file = sampleFile('potted-fig-in-leaf');
  const surroundings = file.site.surroundings.map((thing) =>
    thing.kind === 'wall' ? { ...thing, reflectance } : thing,
  );
  return { ...file, site: { ...file.site, surroundings, wallsThrowLight } };
}

const period = { from: '2026-06-12', to: '2026-06-20' };
const lightOf = (reflectance: number) =>
  finishJob(lightJob(fileWith(reflectance), { period, waves: 4, seed: 5 }, null)).answer.report.shoots;

describe('light that the house wall throws back', () => {
  const [dark, pale, white] = [0, 0.4, 0.8].map(lightOf) as [
    ReturnType<typeof lightOf>,
    ReturnType<typeof lightOf>,
    ReturnType<typeof lightOf>,
  ];

  it('grows in proportion to how pale the wall is, at nodes and on leaves, and a little more: light goes to and fro between wall and ground', () => {
    dark.forEach((shoot, s) => {
      for (const of of ['lightFraction', 'leafLightFraction'] as const) {
        const [half, all] = [pale, white].map((light) => (light[s]?.[of] ?? Number.NaN) - shoot[of]);
        expect(half).toBeGreaterThanOrEqual(-1e-12);
        expect(all).toBeGreaterThanOrEqual(2 * (half ?? Number.NaN) - 1e-12);
        expect(all).toBeLessThan(2.1 * (half ?? Number.NaN) + 1e-12);
      }
    });
  });

  it('is asked for in the file: else walls are dark, however pale', () => {
    const job = lightJob(fileWith(0.8, false), { period, waves: 4, seed: 5 }, null);
    expect(finishJob(job).answer.report.shoots).toEqual(dark);
  });

  it('counts as ground among the parts of the light, or as what leaves pass on of it', () => {
    dark.forEach((shoot, s) => {
      const other = white[s];
      if (other === undefined) throw new Error('no such shoot');
      expect(other.parts.beam).toBeCloseTo(shoot.parts.beam, 12);
      expect(other.parts.sky).toBeCloseTo(shoot.parts.sky, 12);
      expect(other.parts.ground).toBeGreaterThanOrEqual(shoot.parts.ground);
      const sum = Object.values(other.parts).reduce((a, b) => a + b, 0);
      expect(sum).toBeCloseTo(other.lightFraction, 9);
    });
  });

  it('is more on leaves, which look at the wall, than on level sensors, and a good part of neither', () => {
    const mean = (of: 'lightFraction' | 'leafLightFraction'): number =>
      white.reduce((sum, shoot, s) => sum + shoot[of] - (dark[s]?.[of] ?? Number.NaN), 0) / white.length;
    expect(mean('lightFraction')).toBeGreaterThan(0.005);
    expect(mean('leafLightFraction')).toBeGreaterThan(2 * mean('lightFraction'));
    expect(mean('leafLightFraction')).toBeLessThan(0.2);
  });
});
