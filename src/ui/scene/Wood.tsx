/** Trunk, limbs and shoots. */
import { useEffect, useMemo } from 'react';
import type { Canopy } from '../../growth/canopy.ts';
import type { LinearRgb } from '../theme/srgb.ts';
import { makeWoodGeometry } from './woodGeometry.ts';

export interface WoodProps {
  readonly canopy: Canopy;
  readonly standing: Uint8Array;
  readonly colours: readonly LinearRgb[];
  readonly fine: boolean;
}

export function Wood({ canopy, standing, colours, fine }: WoodProps) {
  const geometry = useMemo(
    () =>
      makeWoodGeometry(
        canopy.wood.filter((stretch) => standing[stretch.owner] === 1),
        {
          sides: fine ? 9 : 6,
          extraRadiusM: 0,
          roughness: 0.09,
          colourOf: (owner) => colours[owner] as LinearRgb,
        },
      ),
    [canopy, standing, colours, fine],
  );
  useEffect(() => () => geometry.dispose(), [geometry]);
  return (
    <mesh geometry={geometry} raycast={() => null}>
      <meshLambertMaterial vertexColors />
    </mesh>
  );
}
