/** Blades and petioles, each one instanced mesh. */
import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import {
  CylinderGeometry,
  type InstancedMesh,
  Matrix4,
  MeshLambertMaterial,
  Quaternion,
  Vector3,
} from 'three';
import { distance, lerp, normalize, sub, type Vec3 } from '../../geometry/vec.ts';
import type { Canopy, LeafBlade } from '../../growth/canopy.ts';
import { linearRgbOf } from '../theme/srgb.ts';
import { type LeafLook, leafColours } from './leafColours.ts';
import { upperSideOf } from './leafFrame.ts';
import { makeLeafGeometry } from './leafGeometry.ts';
import { makeLeafMaterial } from './leafMaterial.ts';

/** A petiole's thickness as a share of the midrib; our choice, from the look of fig leaves. */
const petioleRadiusShare = 0.011;

const vector = (v: Vec3): Vector3 => new Vector3(v[0], v[1], v[2]);
const nothing = new Matrix4().makeScale(0, 0, 0);
const upright = new Vector3(0, 1, 0);

function worldFromLeaf(leaf: LeafBlade): Matrix4 {
  return new Matrix4()
    .makeBasis(vector(leaf.along), vector(upperSideOf(leaf)), vector(leaf.across))
    .scale(new Vector3(leaf.midribM, leaf.midribM, leaf.acrossScaleM))
    .setPosition(...leaf.bladeFrom);
}

function worldFromPetiole(leaf: LeafBlade): Matrix4 {
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

export interface LeavesProps {
  readonly canopy: Canopy;
  /** Per owner, 1 for what still stands. */
  readonly standing: Uint8Array;
  readonly look: LeafLook;
  /** Folded blades with all veins, round petioles. */
  readonly fine: boolean;
}

export function Leaves({ canopy, standing, look, fine }: LeavesProps) {
  const blades = useRef<InstancedMesh>(null);
  const petioles = useRef<InstancedMesh>(null);
  const invalidate = useThree((state) => state.invalidate);
  const bladeGeometry = useMemo(() => makeLeafGeometry(canopy.outline, fine), [canopy.outline, fine]);
  const petioleGeometry = useMemo(() => new CylinderGeometry(1, 1, 1, fine ? 5 : 3, 1, true), [fine]);
  const bladeMaterial = useMemo(() => makeLeafMaterial(), []);
  const petioleMaterial = useMemo(() => new MeshLambertMaterial(), []);
  useEffect(() => () => bladeGeometry.dispose(), [bladeGeometry]);
  useEffect(() => () => petioleGeometry.dispose(), [petioleGeometry]);
  useEffect(
    () => () => {
      bladeMaterial.dispose();
      petioleMaterial.dispose();
    },
    [bladeMaterial, petioleMaterial],
  );

  useLayoutEffect(() => {
    canopy.leaves.forEach((leaf, i) => {
      const stands = standing[leaf.owner] === 1;
      blades.current?.setMatrixAt(i, stands ? worldFromLeaf(leaf) : nothing);
      petioles.current?.setMatrixAt(i, stands ? worldFromPetiole(leaf) : nothing);
    });
    for (const mesh of [blades.current, petioles.current]) {
      if (mesh === null) continue;
      mesh.instanceMatrix.needsUpdate = true;
      mesh.computeBoundingSphere();
    }
    invalidate();
  }, [canopy, standing, invalidate]);

  useLayoutEffect(() => {
    const mesh = blades.current;
    if (mesh === null || mesh.instanceColor === null) return;
    mesh.instanceColor.array.set(leafColours(canopy, look));
    mesh.instanceColor.needsUpdate = true;
    petioleMaterial.color.setRGB(...linearRgbOf(look.plant));
    invalidate();
  }, [canopy, look, invalidate, petioleMaterial]);

  const n = canopy.leaves.length;
  if (n === 0) return null;
  return (
    <>
      <instancedMesh ref={blades} args={[bladeGeometry, bladeMaterial, n]} raycast={() => null}>
        <instancedBufferAttribute attach="instanceColor" args={[new Float32Array(n * 3), 3]} />
      </instancedMesh>
      <instancedMesh ref={petioles} args={[petioleGeometry, petioleMaterial, n]} raycast={() => null} />
    </>
  );
}
