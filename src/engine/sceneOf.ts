/** The scene of a traced tree: what was traced, in a form that other programs can trace again. */
import { type SceneFile, sceneFile } from '../document/scene/sceneFile.ts';
import { canopySurfaces, nodeReceivers } from '../growth/scene.ts';
import { leafOptics } from '../light/leafOptics.ts';
import { lightOf } from './askedLight.ts';
import type { LightAnswer } from './engine.ts';
import type { TracedTree } from './tracedTree.ts';

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
