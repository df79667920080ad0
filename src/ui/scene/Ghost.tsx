/** What the ticked cuts take away: a dashed outline of its leaves and a breath of its wood. */
import { useEffect, useMemo } from 'react';
import {
  BufferGeometry,
  DoubleSide,
  Float32BufferAttribute,
  InstancedMesh,
  LineDashedMaterial,
  LineSegments,
  MeshBasicMaterial,
} from 'three';
import type { Canopy } from '../../growth/canopy.ts';
import type { LinearRgb } from '../theme/srgb.ts';
import { outlineStretches } from './leafFrame.ts';
import { makeLeafGeometry } from './leafGeometry.ts';
import { worldFromLeaf } from './leafMatrices.ts';
import { makeWoodGeometry } from './woodGeometry.ts';

export interface GhostProps {
  readonly canopy: Canopy;
  readonly standing: Uint8Array;
  readonly colour: string;
}

const unused: LinearRgb = [1, 1, 1];

function dashedOutlines(canopy: Canopy, standing: Uint8Array, colour: string): LineSegments {
  const leaves = canopy.leaves.filter((leaf) => standing[leaf.owner] === 0);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(outlineStretches(leaves, canopy.outline), 3));
  const material = new LineDashedMaterial({
    color: colour,
    dashSize: 0.03,
    gapSize: 0.013,
    transparent: true,
    opacity: 0.8,
  });
  const lines = new LineSegments(geometry, material);
  lines.raycast = () => undefined;
  return lines.computeLineDistances();
}

/** The bodies of the leaves, faint enough to see through many. */
function faintBlades(canopy: Canopy, standing: Uint8Array, colour: string): InstancedMesh {
  const leaves = canopy.leaves.filter((leaf) => standing[leaf.owner] === 0);
  const material = new MeshBasicMaterial({
    color: colour,
    side: DoubleSide,
    transparent: true,
    opacity: 0.09,
    depthWrite: false,
  });
  const mesh = new InstancedMesh(makeLeafGeometry(canopy.outline, false), material, leaves.length);
  leaves.forEach((leaf, i) => mesh.setMatrixAt(i, worldFromLeaf(leaf)));
  mesh.raycast = () => undefined;
  return mesh;
}

export function Ghost({ canopy, standing, colour }: GhostProps) {
  const outlines = useMemo(() => dashedOutlines(canopy, standing, colour), [canopy, standing, colour]);
  const blades = useMemo(() => faintBlades(canopy, standing, colour), [canopy, standing, colour]);
  const wood = useMemo(() => {
    const stretches = canopy.wood.filter((stretch) => standing[stretch.owner] === 0);
    return makeWoodGeometry(stretches, { sides: 5, extraRadiusM: 0, roughness: 0, colourOf: () => unused });
  }, [canopy, standing]);
  useEffect(
    () => () => {
      outlines.geometry.dispose();
      (outlines.material as LineDashedMaterial).dispose();
    },
    [outlines],
  );
  useEffect(
    () => () => {
      blades.geometry.dispose();
      (blades.material as MeshBasicMaterial).dispose();
      blades.dispose();
    },
    [blades],
  );
  useEffect(() => () => wood.dispose(), [wood]);
  if (!canopy.owners.some((owner, i) => owner !== null && standing[i] === 0)) return null;
  return (
    <>
      <primitive object={outlines} />
      <primitive object={blades} />
      <mesh geometry={wood} raycast={() => null}>
        <meshBasicMaterial color={colour} transparent opacity={0.3} depthTest={false} depthWrite={false} />
      </mesh>
    </>
  );
}
