/** The scene of a traced tree: what was traced, in a form that other programs can trace again. */
import { type SceneFile, sceneFile } from '../document/scene/sceneFile.ts';
import { canopyReceivers, canopySurfaces } from '../growth/scene.ts';
import { leafOptics } from '../light/leafOptics.ts';
import { cellLight } from '../light/sky/cellLight.ts';
import type { LightAnswer } from './engine.ts';
import type { TracedTree } from './tracedTree.ts';

export function sceneOf(traced: TracedTree, { report }: LightAnswer): SceneFile {
  const { canopy, input, ledger } = traced;
  const { site } = input;
  const { period } = report;
  return sceneFile({
    canopy,
    surfaces: [...canopySurfaces(canopy, leafOptics(input.values)), ...input.fixed],
    receivers: canopyReceivers(canopy, { seed: ledger.seed, wave: 0 }).slice(0, canopy.nodes.length),
    ledger,
    light: cellLight({ site, groundReflectance: site.groundReflectance, period, skyKind: 'uniform' }),
    period,
    result: report.shoots.map(({ id, lightFraction, standardError }) => ({
      shoot: id,
      lightFraction,
      standardError,
    })),
  });
}
