/** An old fig in the ground that was let go: everything a winter's look should find is on it once. */
import type { TreeFile } from '../../src/document/treeFile.ts';
import { TreeInHand } from '../../src/editor/forms/treeInHand.ts';
import { tenthMm as mm } from '../../src/geometry/crookedPath.ts';
import { hashText, randomNormal } from '../../src/geometry/random.ts';
import { head } from './head.ts';
import { addFaults } from './oldFaults.ts';
import { addFrame, limbs } from './oldFrame.ts';
import { oldSeed as seed } from './oldSeed.ts';
import { addShoot } from './shoots.ts';
import { terrace } from './terrace.ts';
import { between } from './wood.ts';

/** Shoots on the outer part of older wood, beginning at a share of its length; the outermost are the strongest. */
function addShoots(tree: TreeInHand, woodId: string, count: number, from: number, sick = false): void {
  const lengthM = tree.lengthM(woodId);
  const { name } = tree.standing(woodId).wood;
  for (let i = 0; i < count; i++) {
    const id = `${woodId}-s${i + 1}`;
    const word = hashText(id);
    const rank = i / Math.max(1, count - 1);
    const strength = sick ? 0.55 : 1;
    const shootM = mm(strength * (0.2 + 0.24 * rank) * Math.exp(0.15 * randomNormal(seed, word, 1)));
    addShoot(
      tree,
      {
        id,
        name: `${name}, shoot ${i + 1}`,
        woodId,
        atM: mm(lengthM * (from + (0.998 - from) * rank)),
        aroundDeg: (between(0, 360, seed, hashText(woodId), 7) + 137.5 * i) % 360,
        lengthM: shootM,
        grownIn: 2026,
        lean: i === count - 1 ? 0.3 : 1.1,
        internodeM: 0.05 * between(0.9, 1.1, seed, word, 10),
        midribM: (sick ? 0.12 : 0.155) + 0.07 * shootM + between(-0.008, 0.008, seed, word, 11),
      },
      seed,
    );
  }
}

function oldTree(): TreeInHand {
  const tree = new TreeInHand();
  addFrame(tree);
  addFaults(tree);
  for (const limb of limbs) {
    limb.laterals.forEach((lateral, i) =>
      addShoots(tree, `${limb.id}-${i + 1}`, lateral.shoots, 0.42, lateral.condition === 'diseased'),
    );
  }
  for (const limb of limbs) addShoots(tree, limb.id, 3, 0.9);
  addShoots(tree, 'north-west-rubbing', 3, 0.72);
  addShoots(tree, 'north-west-fork', 4, 0.45);
  return tree;
}

export function oldFigInGround(): TreeFile {
  return {
    ...head(
      'old-fig-in-ground',
      'Old fig on the terrace',
      'An invented tree that was left alone for years: dead and sick wood, suckers, branches that rub, a narrow fork.',
    ),
    ...terrace,
    season: { budBreakOn: '2026-04-02', sketchedOn: '2026-07-08' },
    settings: {},
    axes: oldTree().axes,
  };
}
