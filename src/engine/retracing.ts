/** Waves of a tree of which only a part has moved since it was traced. */
import { type SceneChange, sceneChange } from '../light/trace/change.ts';
import { leafRetracing } from '../light/trace/retraceLeafWave.ts';
import { waveRetracing } from '../light/trace/retraceWave.ts';
import type { JobSteps } from '../plan/errand.ts';
import { withGround } from '../plan/groundLight.ts';
import { progressOf } from './progressOf.ts';
import type { TracedTree } from './tracedTree.ts';
import type { UntracedTree } from './untracedTree.ts';
import type { TracedPair } from './wavePair.ts';

/** Gives pair i of the waves; the job is `from` done before and `to` after. */
export type PairSource = (i: number, from: number, to: number) => JobSteps<TracedPair>;

/** Where more of the surfaces than this has moved, a trace from the start is as quick, on several threads quicker. */
const mostMoved = 0.3;

function movedShare({ surfaceBefore }: SceneChange): number {
  return surfaceBefore.filter((was) => was < 0).length / surfaceBefore.length;
}

/**
 * Whether the waves of the two trees are towards the same directions, with lattices alike. Pots that are turned are left out, and trees
 * before walls that throw light back.
 */
function areRaysAlike(
  { scene: before, input: inputBefore, ledger }: TracedTree,
  { scene, input }: UntracedTree,
): boolean {
  const isTurned = inputBefore.site.quarterTurns !== undefined || input.site.quarterTurns !== undefined;
  return (
    !isTurned &&
    before.throwing === null &&
    scene.throwing === null &&
    before.seed === scene.seed &&
    before.latitudeDeg === scene.latitudeDeg &&
    before.leafCount === scene.leafCount &&
    before.leafAreaM2 === scene.leafAreaM2 &&
    ledger.waves.length === input.waves
  );
}

/**
 * The waves that a trace from the start would give, to the last bit, from those of the tree kept: only rays of and through what has
 * moved, come or gone are traced. Null where that would not be quicker, or the two trees have other rays.
 */
export function retracing(kept: TracedTree, tree: UntracedTree): PairSource | null {
  if (!areRaysAlike(kept, tree)) return null;
  const { scene: before, ledger, leafLedger } = kept;
  const { scene } = tree;
  const change = sceneChange(before.surfaces, scene.surfaces);
  if (movedShare(change) > mostMoved) return null;
  const common = { ...scene, groupCount: scene.leafCount, before, change };
  const [nodesOf, leavesOf] = [waveRetracing(common), leafRetracing(common)];
  return function* (i, from, to) {
    const [wave, leafWave] = [ledger.waves[i], leafLedger.waves[i]];
    if (wave === undefined || leafWave === undefined) throw new Error(`retracing: there is no wave ${i}`);
    const doing = 'Following the light';
    const told = (start: number) => (share: number) => ({ done: start + (share * (to - from)) / 2, doing });
    const nodes = yield* progressOf(nodesOf(wave), told(from));
    const leaves = yield* progressOf(leavesOf(leafWave), told((from + to) / 2));
    return { nodes, leaves: withGround(scene, leaves, null) };
  };
}
