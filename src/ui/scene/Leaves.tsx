/** Blades and petioles, each one instanced mesh. */
import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { CylinderGeometry, InstancedBufferAttribute, type InstancedMesh } from 'three';
import type { Canopy } from '../../growth/canopy.ts';
import { linearRgbOf } from '../theme/srgb.ts';
import { faintLeaves, type LeafLook, leafColours } from './leafColours.ts';
import { makeLeafGeometry } from './leafGeometry.ts';
import { makeLeafMaterial, makePetioleMaterial } from './leafMaterial.ts';
import { nothing, worldFromLeaf, worldFromPetiole } from './leafMatrices.ts';
import type { LeafSlice } from './leafSlice.ts';

export interface LeavesProps {
  readonly canopy: Canopy;
  /** Per owner, 1 for what still stands. */
  readonly standing: Uint8Array;
  readonly look: LeafLook;
  readonly slice: LeafSlice;
  /** Folded blades with all veins, round petioles. */
  readonly fine: boolean;
}

export function Leaves({ canopy, standing, look, slice, fine }: LeavesProps) {
  const blades = useRef<InstancedMesh>(null);
  const petioles = useRef<InstancedMesh>(null);
  const invalidate = useThree((state) => state.invalidate);
  const bladeGeometry = useMemo(() => makeLeafGeometry(canopy.outline, fine), [canopy.outline, fine]);
  const petioleGeometry = useMemo(() => new CylinderGeometry(1, 1, 1, fine ? 5 : 3, 1, true), [fine]);
  const bladeMaterial = useMemo(() => makeLeafMaterial(slice), [slice]);
  const petioleMaterial = useMemo(() => makePetioleMaterial(slice), [slice]);
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
    if (mesh === null) return;
    const colours = leafColours(canopy, look);
    if (mesh.instanceColor?.array.length === colours.length) mesh.instanceColor.array.set(colours);
    else mesh.instanceColor = new InstancedBufferAttribute(colours, 3);
    mesh.instanceColor.needsUpdate = true;
    const faint = faintLeaves(canopy, look);
    const before = mesh.geometry.attributes['faint'];
    if (before?.array.length === faint.length) {
      before.array.set(faint);
      before.needsUpdate = true;
    } else mesh.geometry.setAttribute('faint', new InstancedBufferAttribute(faint, 1));
    petioleMaterial.color.setRGB(...linearRgbOf(look.plant));
    invalidate();
  }, [canopy, look, invalidate, petioleMaterial, bladeGeometry]);

  const n = canopy.leaves.length;
  if (n === 0) return null;
  return (
    <>
      <instancedMesh ref={blades} args={[bladeGeometry, bladeMaterial, n]} raycast={() => null} />
      <instancedMesh ref={petioles} args={[petioleGeometry, petioleMaterial, n]} raycast={() => null} />
    </>
  );
}
