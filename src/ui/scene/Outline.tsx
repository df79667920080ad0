/** A clear line round all leaves and wood of one owner, for what is selected or under the pointer. */
import { useEffect, useMemo } from 'react';
import { BackSide } from 'three';
import type { Canopy } from '../../growth/canopy.ts';
import type { LinearRgb } from '../theme/srgb.ts';
import { FatLines } from './FatLines.tsx';
import { outlineStretches } from './leafFrame.ts';
import { makeWoodGeometry } from './woodGeometry.ts';

export interface OutlineProps {
  readonly canopy: Canopy;
  readonly owner: number;
  readonly colour: string;
  readonly widthPx: number;
  readonly woodExtraM: number;
}

const unused: LinearRgb = [1, 1, 1];

export function Outline({ canopy, owner, colour, widthPx, woodExtraM }: OutlineProps) {
  const edges = useMemo(() => {
    const leaves = canopy.leaves.filter((leaf) => leaf.owner === owner);
    return new Float32Array(outlineStretches(leaves, canopy.outline));
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
          <FatLines ends={edges} colour={colour} widthPx={widthPx} />
          <FatLines ends={edges} colour={colour} widthPx={widthPx} isThrough />
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
