/** Branches under a stroke that marks: their wood stands out through all leaves. */
import { useEffect, useMemo } from 'react';
import type { Canopy } from '../../growth/canopy.ts';
import type { LinearRgb } from '../theme/srgb.ts';
import { ownersIn } from './owner.ts';
import { makeWoodGeometry } from './woodGeometry.ts';

export interface SweptProps {
  readonly canopy: Canopy;
  readonly ids: ReadonlySet<string>;
  readonly colour: string;
}

const unused: LinearRgb = [1, 1, 1];

export function Swept({ canopy, ids, colour }: SweptProps) {
  const geometry = useMemo(() => {
    const swept = ownersIn(canopy, ids);
    const wood = canopy.wood.filter(({ owner }) => swept[owner] === 1);
    return makeWoodGeometry(wood, { sides: 7, extraRadiusM: 0.005, roughness: 0, colourOf: () => unused });
  }, [canopy, ids]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return (
    <mesh geometry={geometry} raycast={() => null} renderOrder={3}>
      <meshBasicMaterial color={colour} transparent opacity={0.85} depthTest={false} depthWrite={false} />
    </mesh>
  );
}
