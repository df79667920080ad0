/** Where the instances of a leaf and of its petiole stand. */
import { Matrix4, Quaternion, Vector3 } from 'three';
import { distance, lerp, normalize, sub, type Vec3 } from '../../geometry/vec.ts';
import type { LeafBlade } from '../../growth/canopy.ts';
import { upperSideOf } from './leafFrame.ts';

/** A petiole's thickness as a share of the midrib; our choice, from the look of fig leaves. */
const petioleRadiusShare = 0.011;

const vector = (v: Vec3): Vector3 => new Vector3(v[0], v[1], v[2]);
/** Draws no instance. */
export const nothing = new Matrix4().makeScale(0, 0, 0);
const upright = new Vector3(0, 1, 0);

/** For geometry from `makeLeafGeometry`. */
export function worldFromLeaf(leaf: LeafBlade): Matrix4 {
  return new Matrix4()
    .makeBasis(vector(leaf.along), vector(upperSideOf(leaf)), vector(leaf.across))
    .scale(new Vector3(leaf.midribM, leaf.midribM, leaf.acrossScaleM))
    .setPosition(...leaf.bladeFrom);
}

/** For a cylinder of radius and height 1 about the origin. */
export function worldFromPetiole(leaf: LeafBlade): Matrix4 {
  const lengthM = distance(leaf.petioleFrom, leaf.bladeFrom);
  if (lengthM < 1e-6) return nothing;
  const turn = new Quaternion().setFromUnitVectors(
    upright,
    vector(normalize(sub(leaf.bladeFrom, leaf.petioleFrom))),
  );
  const radiusM = leaf.midribM * petioleRadiusShare;
  const middle = lerp(leaf.petioleFrom, leaf.bladeFrom, 0.5);
  return new Matrix4().compose(vector(middle), turn, new Vector3(radiusM, lengthM, radiusM));
}
