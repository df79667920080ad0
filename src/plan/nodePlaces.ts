/** Where the nodes of a canopy stand on its shoots. */
import type { Canopy } from '../growth/canopy.ts';
import { shootOf } from './figSites.ts';

export interface NodePlaces {
  /** Per node of the canopy: length of shoot from the node below, metres. */
  readonly stretchM: Float64Array;
  /** Per node: index of its shoot in `canopy.shoots`. */
  readonly shootOf: Int32Array;
}

export function nodePlaces(canopy: Canopy): NodePlaces {
  const indexOfOwner = new Map(canopy.shoots.map((shoot, i) => [shoot.owner, i]));
  const count = canopy.nodes.length;
  const places = { stretchM: new Float64Array(count), shootOf: new Int32Array(count) };
  const reachedM = new Float64Array(canopy.shoots.length);
  const upwards = [...canopy.nodes.entries()].sort(([, a], [, b]) => a.node - b.node);
  for (const [i, { owner, atM }] of upwards) {
    const shoot = shootOf(canopy, indexOfOwner, owner);
    if (shoot === undefined) throw new Error(`nodePlaces: node ${i} belongs to no shoot, got owner ${owner}`);
    places.shootOf[i] = shoot;
    places.stretchM[i] = Math.max(0, atM - (reachedM[shoot] as number));
    reachedM[shoot] = atM;
  }
  return places;
}
