/** A clear line round all leaves and wood of one owner, for what is selected or under the pointer. */
import { Line } from '@react-three/drei';
import { useEffect, useMemo } from 'react';
import { BackSide } from 'three';
import type { Vec3 } from '../../geometry/vec.ts';
import type { Canopy } from '../../growth/canopy.ts';
import type { LinearRgb } from '../theme/srgb.ts';
import { worldFromOutline } from './leafFrame.ts';
import { makeWoodGeometry } from './woodGeometry.ts';

export interface OutlineProps {
  readonly canopy: Canopy;
  readonly owner: number;
  readonly colour: string;
  readonly widthPx: number;
  readonly woodExtraM: number;
}

/** Fainter where something stands in front. */
const throughLeaves = { segments: true, transparent: true, opacity: 0.3, depthTest: false, renderOrder: 2 };

const unused: LinearRgb = [1, 1, 1];

export function Outline({ canopy, owner, colour, widthPx, woodExtraM }: OutlineProps) {
  const edges = useMemo(() => {
    const ends: [number, number, number][] = [];
    for (const leaf of canopy.leaves) {
      if (leaf.owner !== owner) continue;
      const corners = canopy.outline.map((corner) => worldFromOutline(leaf, corner));
      corners.forEach((corner, i) => {
        ends.push([...corner], [...(corners[(i + 1) % corners.length] as Vec3)]);
      });
    }
    return ends;
  }, [canopy, owner]);
  const hull = useMemo(() => {
    const stretches = canopy.wood.filter((stretch) => stretch.owner === owner);
    return makeWoodGeometry(stretches, {
      sides: 7,
      extraRadiusM: woodExtraM,
      roughness: 0,
      colourOf: () => unused,
    });
  }, [canopy, owner, woodExtraM]);
  useEffect(() => () => hull.dispose(), [hull]);
  return (
    <>
      {edges.length > 0 && (
        <>
          <Line points={edges} segments color={colour} lineWidth={widthPx} raycast={() => null} />
          <Line {...throughLeaves} points={edges} color={colour} lineWidth={widthPx} raycast={() => null} />
        </>
      )}
      <mesh geometry={hull} raycast={() => null}>
        <meshBasicMaterial color={colour} side={BackSide} />
      </mesh>
      <mesh geometry={hull} raycast={() => null} renderOrder={2}>
        <meshBasicMaterial color={colour} transparent opacity={0.25} depthTest={false} depthWrite={false} />
      </mesh>
    </>
  );
}
