/** Whether errors fall as they should, and whether the printed error is the true one. */
import { leafExposure } from '../src/light/leafExposure.ts';
import type { Exposure } from '../src/light/ledger.ts';
import { logSlope } from './clock.ts';
import { seasonSky } from './sky.ts';
import { vaseTree } from './vaseTree.ts';
import { leafLedger, type WaveOptions } from './wave.ts';

const [leaves, seeds] = [300, 200];
const tree = vaseTree(leaves, 7);
const light = seasonSky();

const estimate = (waves: number, options: WaveOptions): readonly Exposure[] =>
  leafExposure(leafLedger(tree, waves, options), light);

/** Root mean square over seeds and shoots of estimate less truth. */
function rms(estimates: readonly (readonly Exposure[])[], truth: readonly Exposure[]): number {
  const squares = estimates.flatMap((shoots) =>
    shoots.map(({ share }, s) => (share - (truth[s]?.share ?? Number.NaN)) ** 2),
  );
  return Math.sqrt(squares.reduce((sum, x) => sum + x, 0) / squares.length);
}

const many = (count: number, waves: number, spacingM: number): (readonly Exposure[])[] =>
  Array.from({ length: count }, (_, k) => estimate(waves, { spacingM, seed: 1000 + k }));

export function measureError(): string {
  const truth = estimate(64, { spacingM: 0.04, seed: 77 });
  const coarse = many(seeds, 2, 0.12);
  const byWaves: [number, number][] = [
    [1, rms(coarse, truth)],
    [4, rms(many(40, 8, 0.12), truth)],
    [16, rms(many(20, 32, 0.12), truth)],
  ];
  const bySpacing: [number, number][] = [
    [1, rms(many(60, 2, 0.24), truth)],
    [4, byWaves[0]?.[1] ?? Number.NaN],
    [16, rms(many(60, 2, 0.06), truth)],
  ];
  const all = coarse.flatMap((shoots) =>
    shoots.map(
      ({ share, standardError }, s) => Math.abs(share - (truth[s]?.share ?? Number.NaN)) / standardError,
    ),
  );
  const within = (errors: number): string =>
    ((100 * all.filter((z) => z <= errors).length) / all.length).toFixed(1);
  const row = (points: readonly [number, number][]): string =>
    points.map(([, e]) => e.toFixed(4)).join(' | ');
  return [
    '## Error',
    '',
    `${leaves} leaves, ${tree.shootCount} shoots; root mean square error of a shoot's leaf light, share of open sky, against 64 waves 4 cm apart.`,
    '',
    '| rays | 1 | x 4 | x 16 | slope |',
    '|---|---:|---:|---:|---:|',
    `| by waves (2, 8, 32; 12 cm apart) | ${row(byWaves)} | ${logSlope(byWaves).toFixed(2)} |`,
    `| by spacing (24, 12, 6 cm; 2 waves) | ${row(bySpacing)} | ${logSlope(bySpacing).toFixed(2)} |`,
    '',
    `The truth lies within two printed errors in **${within(2)} %** of ${all.length} cases (${seeds} seeds, 2 waves 12 cm apart), within one in ${within(1)} %.`,
    '',
    'Goals: a slope of -0.5 or steeper; 90 to 99 % within two.',
    '',
  ].join('\n');
}
