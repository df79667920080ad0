/** The scene of a traced tree: what was traced, in a form that other programs can trace again. */
import { type SceneFile, sceneFile } from '../document/scene/sceneFile.ts';
import { thrownLight } from '../document/scene/thrownLight.ts';
import { canopySurfaces, nodeReceivers } from '../growth/scene.ts';
import { leafOptics } from '../light/leafOptics.ts';
import { lightOf } from './askedLight.ts';
import type { LightAnswer } from './engine.ts';
import type { TracedTree } from './tracedTree.ts';

/** @param lit the same tree traced by the same rays with walls that throw light back */
export function withThrownLight(
  scene: SceneFile,
  { traced, answer }: { readonly traced: TracedTree; readonly answer: LightAnswer },
): SceneFile {
  const { input, ledger, scene: canopy } = traced;
  const dark = new Map(scene.result.map(({ shoot, lightFraction }) => [shoot, lightFraction]));
  const result = answer.report.shoots.map(({ id, lightFraction }) => ({
    shoot: id,
    lightFraction: lightFraction - (dark.get(id) ?? Number.NaN),
  }));
  const patches = canopy.throwing?.patches ?? [];
  return { ...scene, thrown: thrownLight(ledger, lightOf(input, answer.report), patches, result) };
}

export function sceneOf(traced: TracedTree, { report }: LightAnswer): SceneFile {
  const { canopy, input, ledger } = traced;
  const { period, energy } = report;
  return sceneFile({
    canopy,
    surfaces: [...canopySurfaces(canopy, leafOptics(input.values)), ...input.fixed],
    receivers: nodeReceivers(canopy),
    ledger,
    light: lightOf(input, report),
    period,
    energy,
    result: report.shoots.map(({ id, lightFraction, standardError }) => ({
      shoot: id,
      lightFraction,
      standardError,
    })),
  });
}
