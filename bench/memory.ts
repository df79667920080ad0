/** Memory for a tree of 100,000 leaves. */
import { leafExposure } from '../src/light/leafExposure.ts';
import { quantile, timeMs } from './clock.ts';
import { seasonSky } from './sky.ts';
import { vaseTree } from './vaseTree.ts';
import { leafLedger } from './wave.ts';

const [leaves, spacingM, waves] = [100_000, 0.2, 2];

export function measureMemory(): string {
  const tree = vaseTree(leaves, 7);
  const light = seasonSky();
  const before = process.resourceUsage().maxRSS / 1024;
  let errors: number[] = [];
  let hits = 0;
  const ms = timeMs(() => {
    const ledger = leafLedger(tree, waves, { spacingM, seed: 9 });
    hits = ledger.waves.reduce((sum, wave) => sum + wave.hitKind.length, 0);
    errors = leafExposure(ledger, light).map(({ standardError }) => standardError);
  });
  const peak = process.resourceUsage().maxRSS / 1024;
  return [
    '## Memory for 100,000 leaves',
    '',
    `${waves} waves, rays ${spacingM * 100} cm apart, ${(hits / 1e6).toFixed(1)} million hits in the ledger, ${(ms / 1000).toFixed(1)} s: the whole process at its peak **${peak.toFixed(0)} MB**, ${before.toFixed(0)} MB of it before tracing (Node, the program and the tree). Standard error of a shoot's light: ${quantile(errors, 0.5).toFixed(4)} of open sky in the median.`,
    '',
    'Goal: 400 MB.',
    '',
  ].join('\n');
}
