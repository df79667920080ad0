/** What larger trees cost. */

import { waveDirections } from '../src/light/sky/waveDirections.ts';
import { plainCaster } from '../src/light/trace/lattice/caster.ts';
import { makeLatticeScene } from '../src/light/trace/lattice/scene.ts';
import { fastestCaster } from '../src/light/trace/lattice/simdCaster.ts';
import { logSlope, timeMs } from './clock.ts';
import { vaseTree } from './vaseTree.ts';
import { latitudeDeg, leafWave } from './wave.ts';

const sizes = [300, 1000, 5000, 20_000, 100_000] as const;
const spacingM = 0.067;
const wholeWave = waveDirections({ latitudeDeg, seed: 5, wave: 0 }).length;
/** Fewer directions of larger trees. */
const everyDirection = (leaves: number): number => (leaves < 5000 ? 2 : leaves < 20_000 ? 8 : 16);

export function measureGrowth(): string {
  const engines = { WebAssembly: fastestCaster, TypeScript: plainCaster };
  const rows: string[] = [];
  const warmUp = vaseTree(600, 7);
  for (const makeCaster of Object.values(engines)) leafWave(warmUp, 0, { spacingM, seed: 5, makeCaster });
  const points: Record<string, [number, number][]> = { WebAssembly: [], TypeScript: [] };
  for (const leaves of sizes) {
    const tree = vaseTree(leaves, 7);
    const rounds = leaves < 20_000 ? 7 : 3;
    const prepare = (): number => timeMs(() => makeLatticeScene({ ...tree, groupCount: tree.shootCount }));
    const scene = Math.min(...Array.from({ length: rounds }, prepare));
    const times = Object.entries(engines).map(([name, makeCaster]) => {
      const options = { spacingM, seed: 5, makeCaster, everyDirection: everyDirection(leaves) };
      const ms = Array.from({ length: rounds }, (_, k) => timeMs(() => leafWave(tree, k, options)));
      const directions = leafWave(tree, 0, options).directions.length;
      const perDirection = (Math.min(...ms) - scene) / directions + scene / wholeWave;
      points[name]?.push([leaves, perDirection]);
      return perDirection.toFixed(3);
    });
    rows.push(`| ${leaves} | ${times.join(' | ')} | ${scene.toFixed(0)} |`);
  }
  const slopes = Object.keys(engines).map((name) => logSlope(points[name] ?? []).toFixed(2));
  return [
    '## Cost over the size of the tree',
    '',
    `Rays ${spacingM * 100} cm apart, some of a wave's directions; the time of preparing the scene is shared out over all ${wholeWave} of a wave. Warm; the quickest of several rounds.`,
    '',
    '| leaves | WebAssembly, ms a direction | TypeScript, ms a direction | preparing, ms |',
    '|---:|---:|---:|---:|',
    ...rows,
    `| **exponent** | **${slopes.join('** | **')}** | |`,
    '',
    'Goal: an exponent of 1.1 at most.',
    '',
  ].join('\n');
}
