/** Light of every shoot of a tree of 1,000 leaves, from a cold start. */
import { leafExposure } from '../src/light/leafExposure.ts';
import { plainCaster } from '../src/light/trace/lattice/caster.ts';
import { fastestCaster } from '../src/light/trace/lattice/simdCaster.ts';
import { nowMs, quantile } from './clock.ts';
import { seasonSky } from './sky.ts';
import { vaseTree } from './vaseTree.ts';
import { leafLedger } from './wave.ts';

const spacingM = 0.08;
const waves = 2;

export function measureCold(engine: 'wasm' | 'typescript'): string {
  const tree = vaseTree(1000, 7);
  const light = seasonSky();
  const makeCaster = engine === 'wasm' ? fastestCaster : plainCaster;
  const before = nowMs();
  const ledger = leafLedger(tree, waves, { spacingM, seed: 11, makeCaster });
  const traced = nowMs();
  const exposures = leafExposure(ledger, light);
  const after = nowMs();
  const relative = exposures.map(({ share, standardError }) => (100 * standardError) / share);
  const directions = ledger.waves.reduce((sum, wave) => sum + wave.directions.length, 0);
  const at = (share: number): string => quantile(relative, share).toFixed(1);
  const within = (100 * relative.filter((error) => error <= 2).length) / relative.length;
  return [
    `## From cold to the light of every shoot: ${engine === 'wasm' ? 'WebAssembly' : 'TypeScript alone'}`,
    '',
    `1,000 leaves, ${tree.shootCount} shoots, ${waves} waves of ${directions} directions in all, rays ${(100 * spacingM).toFixed(0)} cm apart: tracing ${(traced - before).toFixed(0)} ms, answer ${(after - traced).toFixed(0)} ms, together **${(after - before).toFixed(0)} ms** of one core. Standard error of a shoot's light, percent of it: ${at(0.5)} in the median, ${at(0.9)} at 90 %, ${at(1)} at worst; ${within.toFixed(0)} % of the shoots have 2 % or less.`,
    '',
    'Goal: 565 directions and 2 % in 150 ms.',
    '',
  ].join('\n');
}
