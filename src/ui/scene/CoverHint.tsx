/** Film or net above the place: a pale sheet on four poles, with the meshes of a net. A hint, not to scale. */
import { useEffect, useMemo } from 'react';
import { BufferGeometry, DoubleSide, Float32BufferAttribute } from 'three';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Extent } from './extent.ts';
import type { StageColours } from './stageModel.ts';

interface CoverHintProps {
  readonly cover: NonNullable<TreeFile['site']['cover']>;
  readonly extent: Extent;
  readonly colours: StageColours;
}

/** Half its side in reaches of the tree, its height in heights of the tree, and meshes along a side. */
const [halfReaches, heights, meshes] = [1.25, 1.25, 14] as const;
/** What scatters less is drawn as a net. Our choice. */
const netBelow = 0.25;

/** Lines of the edge, the poles and, for a net, the meshes; corners at 1 and -1, the sheet at height 0. */
function lines(isNet: boolean, downM: number): number[] {
  const across = Array.from({ length: meshes + 1 }, (_, i) => (2 * i) / meshes - 1);
  const shown = isNet ? across : [-1, 1];
  const sheet = shown.flatMap((s) => [s, 0, -1, s, 0, 1, -1, 0, s, 1, 0, s]);
  const poles = [-1, 1].flatMap((x) => [-1, 1].flatMap((z) => [x, 0, z, x, -downM, z]));
  return [...sheet, ...poles];
}

export function CoverHint({ cover, extent, colours }: CoverHintProps) {
  const halfM = halfReaches * extent.reachM;
  const heightM = heights * extent.heightM;
  const isNet = cover.diffusingFraction < netBelow;
  const geometry = useMemo(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new Float32BufferAttribute(lines(isNet, heightM), 3));
    return made;
  }, [isNet, heightM]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return (
    <group position={[extent.centre[0], heightM, extent.centre[2]]}>
      <lineSegments geometry={geometry} scale={[halfM, 1, halfM]} raycast={() => null}>
        <lineBasicMaterial
          color={colours.quiet}
          transparent
          opacity={isNet ? 0.35 : 0.6}
          depthWrite={false}
        />
      </lineSegments>
      <mesh rotation={[-Math.PI / 2, 0, 0]} scale={2 * halfM} raycast={() => null}>
        <planeGeometry />
        <meshBasicMaterial
          color={colours.quiet}
          transparent
          opacity={0.3 * (1 - cover.passedFraction)}
          depthWrite={false}
          side={DoubleSide}
        />
      </mesh>
    </group>
  );
}
