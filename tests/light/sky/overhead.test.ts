import { describe, expect, it } from 'vitest';
import type { CellLight } from '../../../src/light/directions.ts';
import { rayWeights } from '../../../src/light/rayWeights.ts';
import { cellLight } from '../../../src/light/sky/cellLight.ts';
import { hangsOn, passedBy } from '../../../src/light/sky/cover.ts';
import type { SkySite } from '../../../src/light/sky/dayLight.ts';
import { levelLight, together } from '../../../src/light/sky/levelLight.ts';
import { poseOn } from '../../../src/light/sky/turns.ts';
import { waveDirections } from '../../../src/light/sky/waveDirections.ts';
import { northern } from '../../season/places.ts';

const period = { from: '2026-05-11', to: '2026-07-19' };
const film = { passedFraction: 0.8, diffusingFraction: 0.35, dates: null };
const lightAt = (site: SkySite, when = period): CellLight =>
  cellLight({ site, groundReflectance: 0.2, period: when, skyKind: 'uniform' });

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);

/** Share of a level sensor with nothing near it, over so many waves. */
function openShare(light: CellLight, waveCount: number, posed = false): number {
  const waves = Array.from({ length: waveCount }, (_, wave) => ({
    directions: waveDirections({ latitudeDeg: northern.latitudeDeg, seed: 7, wave }).map((d, i) =>
      posed ? { ...d, pose: (i + wave) % 4 } : d,
    ),
  }));
  const weights = rayWeights({ waves }, light);
  return (
    waves.reduce(
      (total, { directions }, w) =>
        total +
        directions.reduce(
          (part, { toSky }, d) => part + (weights[w]?.weight[d] ?? NaN) * Math.max(0, toSky[1]),
          0,
        ),
      0,
    ) / waveCount
  );
}

describe('a cover', () => {
  it('hangs from its first day to its last, also across New Year, or all year', () => {
    const summer = { ...film, dates: { from: '05-20', until: '09-03' } };
    const winter = { ...film, dates: { from: '11-02', until: '02-28' } };
    const days = [
      '2026-05-19',
      '2026-05-20',
      '2026-09-03',
      '2026-09-04',
      '2026-11-02',
      '2027-02-28',
      '2027-03-01',
    ];
    expect(days.map((day) => hangsOn(summer, day))).toEqual([false, true, true, false, false, false, false]);
    expect(days.map((day) => hangsOn(winter, day))).toEqual([false, false, false, false, true, true, false]);
    expect(days.every((day) => hangsOn(film, day))).toBe(true);
  });

  it('leaves a level sensor the share it passes of the open sky above it, which stays as it was', () => {
    const [open, below] = [lightAt(northern), lightAt({ ...northern, cover: film })];
    expect(below.openSkyParMolM2Day).toBe(open.openSkyParMolM2Day);
    expect(openShare(below, 3)).toBeCloseTo(0.8, 9);
    expect(openShare(open, 3)).toBeCloseTo(1, 9);
  });

  it('turns its share of the beam into light of the sky, and darkens the ground', () => {
    const [open, below] = [lightAt(northern), lightAt({ ...northern, cover: film })];
    expect(sum(below.beam) / sum(open.beam)).toBeCloseTo(0.8 * 0.65, 9);
    const { openBeamParMolM2Day: beam, openDiffuseParMolM2Day: sky } = open;
    expect(sum(below.sky) / sum(open.sky)).toBeCloseTo((0.8 * (sky + 0.35 * beam)) / sky, 9);
    expect(sum(below.ground) / sum(open.ground)).toBeCloseTo(0.8, 9);
  });

  it('counts on the days that it hangs alone', () => {
    const half = lightAt({ ...northern, cover: { ...film, dates: { from: '06-15', until: '12-31' } } });
    const before = lightAt(northern, { from: '2026-05-11', to: '2026-06-14' });
    const after = lightAt(northern, { from: '2026-06-15', to: '2026-07-19' });
    const expected =
      (before.openSkyParMolM2Day + 0.8 * after.openSkyParMolM2Day) /
      (before.openSkyParMolM2Day + after.openSkyParMolM2Day);
    expect(openShare(half, 2)).toBeCloseTo(expected, 9);
  });

  it('is refused with shares beyond 0 to 1', () => {
    expect(() => passedBy({ ...film, passedFraction: 1.2 })).toThrow('passedBy');
    expect(() => passedBy({ ...film, diffusingFraction: -0.1 })).toThrow('passedBy');
  });
});

describe('a pot that is turned', () => {
  const quarterTurns = { from: '2026-04-20', everyWeeks: 3 };

  it('takes a new pose after every so many weeks, and stands as it is before', () => {
    const days = [
      '2026-01-01',
      '2026-05-10',
      '2026-05-11',
      '2026-05-31',
      '2026-06-01',
      '2026-07-12',
      '2026-07-13',
    ];
    expect(days.map((day) => poseOn(quarterTurns, day))).toEqual([0, 0, 1, 1, 2, 3, 0]);
    expect(() => poseOn({ from: '2026-04-20', everyWeeks: 0 }, '2026-05-10')).toThrow('poseOn');
  });

  it('has the light of each pose from the days in it, in all that of the period', () => {
    const [turned, still] = [lightAt({ ...northern, quarterTurns }), lightAt(northern)];
    expect(turned.poses).toHaveLength(4);
    for (const kind of ['sky', 'beam', 'ground'] as const) {
      still[kind].forEach((energy, cell) => {
        const ofPoses = (turned.poses ?? []).reduce((total, pose) => total + (pose[kind][cell] ?? NaN), 0);
        expect(ofPoses, `${kind} ${cell}`).toBeCloseTo(energy, 9);
        expect(turned[kind][cell]).toBeCloseTo(energy, 9);
      });
    }
    const oneTurn = lightAt(northern, { from: '2026-05-11', to: '2026-05-31' });
    const weeks = sum(turned.poses?.[1]?.beam ?? new Float64Array());
    expect(weeks).toBeCloseTo((sum(oneTurn.beam) * 21) / 70, 9);
  });

  it('gives a level sensor the open sky, in whatever pose each direction was traced', () => {
    expect(openShare(lightAt({ ...northern, quarterTurns }), 3, true)).toBeCloseTo(1, 9);
    expect(openShare(lightAt({ ...northern, cover: film, quarterTurns }), 3, true)).toBeCloseTo(0.8, 9);
  });

  it('keeps its poses when months are put together', () => {
    const site = { ...northern, quarterTurns, cover: film };
    const parts = [
      levelLight(site, { from: '2026-05-11', to: '2026-06-03' }),
      levelLight(site, { from: '2026-06-04', to: '2026-07-19' }),
    ];
    const [joined, whole] = [together(parts), levelLight(site, period)];
    expect(joined.days).toBe(whole.days);
    joined.poses?.forEach((pose, p) => {
      const expected = whole.poses?.[p];
      expect(pose.days).toBe(expected?.days);
      expect(sum(pose.below?.diffuseParMolM2 ?? new Float64Array())).toBeCloseTo(
        sum(expected?.below?.diffuseParMolM2 ?? new Float64Array()),
        9,
      );
    });
  });
});

describe('what hides the low sky', () => {
  const wall = { skyline: { reflectance: 0, points: [{ bearingDeg: 0, heightDeg: 30 }] } };

  it('takes the beam below it and a share of the sky, without brightening the rest', () => {
    const winter = { from: '2026-12-10', to: '2026-12-31' };
    const [open, hidden] = [lightAt(northern, winter), lightAt({ ...northern, ...wall }, winter)];
    // The sun does not rise above 30 degrees: what is left is cos^2 30 of the sky.
    const skyShare = open.openDiffuseParMolM2Day / open.openSkyParMolM2Day;
    expect(openShare(hidden, 40)).toBeCloseTo(0.75 * skyShare, 2);
    expect(hidden.openSkyParMolM2Day).toBe(open.openSkyParMolM2Day);
  });

  it('counts as ground in the parts of the light', () => {
    const hidden = lightAt({ ...northern, ...wall });
    const directions = waveDirections({ latitudeDeg: northern.latitudeDeg, seed: 3, wave: 0 });
    const [weights] = rayWeights({ waves: [{ directions }] }, hidden);
    const low = directions.findIndex(({ kind, toSky }) => kind === 'sky' && toSky[1] < 0.4);
    expect(weights?.from[low]).toBe('ground');
    expect(weights?.weight[low]).toBe(0);
    expect(weights?.open[low]).toBeGreaterThan(0);
  });
});
