/** A fence of slats with its gaps. */
import { useLayoutEffect, useRef } from 'react';
import { type InstancedMesh, Matrix4 } from 'three';
import type { Extent } from './extent.ts';
import type { Slab } from './slab.ts';
import { slatsOf } from './slats.ts';
import { useGlass } from './useGlass.ts';

interface FenceProps {
  readonly slab: Slab;
  readonly openFraction: number;
  readonly extent: Extent;
  readonly colour: string;
}

/** Height and middle of the two rails, as shares of the fence's height. */
const [railHigh, railsAt] = [0.035, [-0.3, 0.3]] as const;

export function Fence({ slab, openFraction, extent, colour }: FenceProps) {
  const [lengthM, heightM, thicknessM] = slab.size;
  const { widthM, atM } = slatsOf(lengthM, openFraction);
  const slats = useRef<InstancedMesh>(null);
  const [slatMaterial, railMaterial] = [useGlass(slab, extent), useGlass(slab, extent)];
  useLayoutEffect(() => {
    const mesh = slats.current;
    if (mesh === null) return;
    atM.forEach((x, i) => mesh.setMatrixAt(i, new Matrix4().makeTranslation(x, 0, 0)));
    mesh.instanceMatrix.needsUpdate = true;
    mesh.computeBoundingSphere();
  });
  return (
    <group position={[...slab.centre]} rotation={[0, slab.turnedRad, 0]}>
      <instancedMesh
        key={atM.length}
        ref={slats}
        args={[undefined, undefined, atM.length]}
        raycast={() => null}
      >
        <boxGeometry args={[widthM, heightM, thicknessM]} />
        <meshLambertMaterial ref={slatMaterial} color={colour} />
      </instancedMesh>
      {openFraction === 0
        ? null
        : railsAt.map((y) => (
            <mesh key={y} position={[0, y * heightM, 0]} raycast={() => null}>
              <boxGeometry args={[lengthM, railHigh * heightM, thicknessM * 1.6]} />
              <meshLambertMaterial ref={y < 0 ? railMaterial : null} color={colour} />
            </mesh>
          ))}
    </group>
  );
}
