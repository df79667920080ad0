/** Light per shoot, traced once and then only weighed anew. */
import type { TreeFile } from '../document/treeFile.ts';
import type { LeafWave } from '../light/leafLedger.ts';
import type { Wave } from '../light/ledger.ts';
import { canopyWaveSteps, leafWaveSteps } from '../plan/canopyWave.ts';
import type { SeasonDates } from '../season/seasonDates.ts';
import type { Period } from '../season/site.ts';
import type { LightAnswer, LightOptions } from './engine.ts';
import { grownTree } from './grownTree.ts';
import type { Job, Progress } from './job.ts';
import { type Asked, lightAnswer } from './lightAnswer.ts';
import { progressOf } from './progressOf.ts';
import type { TracedTree } from './tracedTree.ts';

const keyOf = (
  { axes, site, standing, season, settings, cultivar }: TreeFile,
  options: LightOptions,
): string => JSON.stringify([axes, site, standing, season, settings, cultivar, options.seed, options.waves]);

/** The season in which light counts: from leaf-out to the last useful fig. */
export const usefulSeason = ({ leafOutOn, ripeningEndsOn }: SeasonDates): Period => ({
  from: leafOutOn,
  to: ripeningEndsOn,
});

const askedOf = ({ period, weather, sky }: LightOptions, season: SeasonDates): Asked => ({
  period: period ?? usefulSeason(season),
  weather: weather ?? 'normal',
  sky: sky ?? 'uniform',
});

/** Coarse answers are given after so many waves; two are the least that can tell their doubt. */
const givesPartialAfter = (waves: number): boolean => waves >= 2 && Number.isInteger(Math.log2(waves));

/** @param kept the tree traced last, used again when nothing that the rays depend on has changed */
export function* lightJob(
  file: TreeFile,
  options: LightOptions,
  kept: TracedTree | null,
): Job<{ readonly answer: LightAnswer; readonly traced: TracedTree }, LightAnswer> {
  const key = keyOf(file, options);
  if (kept?.key === key) {
    yield { done: 0.5, doing: 'Weighing the light' };
    return { answer: lightAnswer(kept, askedOf(options, kept.season)), traced: kept };
  }
  const { input, season, canopy, surfaces } = grownTree(file, options);
  const asked = askedOf(options, season);
  const { seed } = input;
  const [waves, leafWaves]: [Wave[], LeafWave[]] = [[], []];
  const traced = (): TracedTree => {
    const ownerCount = canopy.owners.length;
    const ledger = { ownerCount, receiverCount: canopy.nodes.length, waves: [...waves], seed };
    const leafLedger = { ownerCount, groupCount: canopy.shoots.length, waves: [...leafWaves], seed };
    return { key, input, season, canopy, ledger, leafLedger };
  };
  for (let wave = 0; wave < input.waves; wave++) {
    const { latitudeDeg } = input.site;
    const wanted = { canopy, surfaces, latitudeDeg, seed, wave };
    const progress = (half: number, of: number): Progress<LightAnswer> => ({
      done: (wave + half + of / 2) / input.waves,
      doing: 'Following the light',
    });
    waves.push(yield* progressOf(canopyWaveSteps(wanted), (done) => progress(0, done)));
    leafWaves.push(yield* progressOf(leafWaveSteps(wanted), (done) => progress(0.5, done)));
    const done = waves.length / input.waves;
    if (done < 1 && givesPartialAfter(waves.length)) {
      yield { done, doing: 'Following the light', partial: lightAnswer(traced(), asked) };
    }
  }
  return { answer: lightAnswer(traced(), asked), traced: traced() };
}
