/** A season's light traced, wave by wave. */
import type { Wave } from '../light/ledger.ts';
import { canopyScene } from './canopyScene.ts';
import { fetchTask, type JobSteps } from './errand.ts';
import type { PlanInput } from './input.ts';
import type { TracedSeason, TracedStage } from './tracedSeason.ts';

/**
 * A wave looks along one direction of sky and sun in so many, the next wave along others. Of 27 figs over eight waves the standard
 * deviation is then 0.04 instead of 0.025 (measured, potted sample), for a third of the time.
 */
const oneDirectionIn = 3;

/** The light of a fig is a mean over stages, so each of those beside full leaf needs fewer waves. */
const wavesOf = (stage: TracedStage, { full }: TracedSeason, waveCount: number): number =>
  stage === full ? waveCount : Math.ceil(waveCount / 2);

/**
 * The same season with so many waves of light at full leaf, at least; those it has are used again. Each ledger holds for
 * its own light only. `done` runs from 0 to 1.
 */
export function* traceUpTo(
  waveCount: number,
  traced: TracedSeason,
  input: PlanInput,
): JobSteps<TracedSeason> {
  const { stages, full, light } = traced;
  const tasks = stages.flatMap((stage) => {
    const had = stage.ledger.waves.length;
    const missing = Math.max(0, wavesOf(stage, traced, waveCount) - had);
    if (missing === 0) return [];
    const scene = canopyScene(stage.canopy, input, stage.asked);
    const onlyFor = stage === full ? light : stage.light;
    return Array.from({ length: missing }, (_, i) => {
      const wave = had + i;
      const thinned = { every: oneDirectionIn, from: wave % oneDirectionIn };
      return { stage, task: { at: 'nodes', scene, wave, onlyFor, thinned } as const };
    });
  });
  const waves = new Map(stages.map((stage) => [stage, [...stage.ledger.waves]]));
  const size = tasks.map(({ task }) => 1 + task.scene.leafCount);
  const whole = size.reduce((sum, leaves) => sum + leaves, 0);
  let before = 0;
  for (const [i, { stage, task }] of tasks.entries()) {
    const ahead = tasks.slice(i + 1).map((later) => later.task);
    const after = before + (size[i] as number);
    const part = { doing: 'Following the light', from: before / whole, to: after / whole };
    waves.get(stage)?.push(yield* fetchTask(task, ahead, part));
    before = after;
  }
  const retraced = stages.map(
    (stage): TracedStage => ({
      ...stage,
      ledger: { ...stage.ledger, waves: waves.get(stage) as Wave[] },
    }),
  );
  return { ...traced, stages: retraced, full: retraced[stages.indexOf(full)] as TracedStage };
}
