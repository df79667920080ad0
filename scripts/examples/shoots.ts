/** This season's shoots in leaf, from a place on older wood. */
import { type ShootPlan, shootOffer } from '../../src/editor/forms/shootOffer.ts';
import type { TreeInHand } from '../../src/editor/forms/treeInHand.ts';
import { figValues } from '../../src/species/fig.ts';

interface SampleShoot extends Omit<ShootPlan, 'leafCount' | 'source'> {
  readonly internodeM: number;
}

export const published = figValues({});

/** Leaves of a shoot: some short internodes at the base and the tip, the rest of the given length. */
const leafCount = (lengthM: number, internodeM: number): number => Math.round(3.4 + lengthM / internodeM);

/** Each tries again a little otherwise until it stands clear of other wood. */
export function addShoot(tree: TreeInHand, { internodeM, ...plan }: SampleShoot, seed: number): void {
  const counted = { ...plan, leafCount: leafCount(plan.lengthM, internodeM), source: 'measured' } as const;
  tree.addClear(0.006, 80, shootOffer(tree, counted, published, seed));
}
