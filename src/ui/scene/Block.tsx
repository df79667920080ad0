/** A wall, hedge or house, with its roof if it has one. */
import { useEffect, useMemo } from 'react';
import { BufferGeometry, DoubleSide, Float32BufferAttribute } from 'three';
import type { Extent } from './extent.ts';
import { roofTriangles } from './roof.ts';
import type { Slab } from './slab.ts';
import { useGlass } from './useGlass.ts';

interface BlockProps {
  readonly slab: Slab;
  readonly extent: Extent;
  readonly colour: string;
  /** Height of the ridge above the ground, metres; absent for a flat roof. */
  readonly ridgeM?: number | undefined;
  readonly opacity?: number;
}

export function Block({ slab, extent, colour, ridgeM, opacity = 1 }: BlockProps) {
  const material = useGlass(slab, extent, opacity);
  const roof = useMemo(() => {
    if (ridgeM === undefined) return null;
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new Float32BufferAttribute(roofTriangles(slab.size, ridgeM).flat(), 3));
    geometry.computeVertexNormals();
    return geometry;
  }, [slab, ridgeM]);
  useEffect(() => () => roof?.dispose(), [roof]);
  const roofMaterial = useGlass(slab, extent, opacity);
  return (
    <group position={[...slab.centre]} rotation={[0, slab.turnedRad, 0]}>
      <mesh raycast={() => null}>
        <boxGeometry args={[...slab.size]} />
        <meshLambertMaterial ref={material} color={colour} />
      </mesh>
      {roof === null ? null : (
        <mesh geometry={roof} raycast={() => null}>
          <meshLambertMaterial ref={roofMaterial} color={colour} side={DoubleSide} />
        </mesh>
      )}
    </group>
  );
}
