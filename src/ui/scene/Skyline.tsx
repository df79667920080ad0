/** The skyline, and ground that rises, as a soft band far off. */
import { useFrame } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { BufferGeometry, DoubleSide, Float32BufferAttribute, type Mesh } from 'three';
import { direction, rad } from '../../geometry/world.ts';
import { linearRgbOf } from '../theme/srgb.ts';
import type { Extent } from './extent.ts';

/** How far off the band is drawn, metres: near enough to be seen whole, far enough to stand still. */
const awayM = 60;
const stepDeg = 3;
/** Opacity at the foot of the band and at its upper edge. */
const [low, high] = [0.12, 0.5] as const;

interface SkylineProps {
  /** Height of the skyline above the level at a bearing, degrees. */
  readonly heightDeg: (bearingDeg: number) => number;
  readonly extent: Extent;
  readonly colour: string;
}

/** Two rings of corners about the upright: the horizon, and the skyline at its heights. */
export function skylineBand(heightDeg: (bearingDeg: number) => number): number[] {
  const corners: number[] = [];
  for (let bearing = 0; bearing < 360; bearing += stepDeg) {
    const foot = direction(bearing, 0);
    const topM = awayM * Math.tan(rad(heightDeg(bearing)));
    corners.push(awayM * foot[0], 0, awayM * foot[2], awayM * foot[0], topM, awayM * foot[2]);
  }
  return corners;
}

export function Skyline({ heightDeg, extent, colour }: SkylineProps) {
  const mesh = useRef<Mesh>(null);
  const geometry = useMemo(() => {
    const corners = skylineBand(heightDeg);
    const count = corners.length / 6;
    const index = Array.from({ length: count }, (_, i) => {
      const [a, b] = [2 * i, 2 * ((i + 1) % count)];
      return [a, b, b + 1, a, b + 1, a + 1];
    }).flat();
    const rgb = linearRgbOf(colour);
    const colours = Array.from({ length: 2 * count }, (_, i) => [...rgb, i % 2 === 0 ? low : high]).flat();
    const made = new BufferGeometry();
    made.setAttribute('position', new Float32BufferAttribute(corners, 3));
    made.setAttribute('color', new Float32BufferAttribute(colours, 4));
    made.setIndex(index);
    return made;
  }, [heightDeg, colour]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  // From the sun's eye or from above it would lie over the tree.
  useFrame(({ camera }) => {
    if (mesh.current !== null) mesh.current.visible = 'isPerspectiveCamera' in camera;
  });
  return (
    <mesh
      ref={mesh}
      geometry={geometry}
      position={[extent.centre[0], 0, extent.centre[2]]}
      renderOrder={-5}
      frustumCulled={false}
      raycast={() => null}
    >
      <meshBasicMaterial vertexColors transparent depthWrite={false} side={DoubleSide} />
    </mesh>
  );
}
