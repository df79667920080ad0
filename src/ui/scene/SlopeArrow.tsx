/** The way water runs on sloping ground, as an arrow with its fall. */
import { useMemo } from 'react';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import { direction } from '../../geometry/world.ts';
import { compassRadiusM, type Extent } from './extent.ts';
import { wordImage } from './label.ts';
import { Sign } from './Sign.tsx';
import type { StageColours } from './stageModel.ts';

interface SlopeArrowProps {
  readonly slope: NonNullable<TreeFile['site']['slope']>;
  readonly extent: Extent;
  readonly colours: StageColours;
}

/** Where the arrow begins and ends, and how far aside its words stand, in radii of the compass; half the width of its head. */
const [from, neck, to, aside, half] = [0.5, 0.72, 0.88, 0.24, 0.05] as const;

export function SlopeArrow({ slope, extent, colours }: SlopeArrowProps) {
  const radiusM = compassRadiusM(extent);
  const image = useMemo(
    () => wordImage(`falls ${Math.round(slope.slopeDeg)}°`, 15, colours.quiet, colours.paper),
    [slope.slopeDeg, colours],
  );
  const corners = useMemo(() => {
    const [x, , z] = direction(slope.fallsToDeg, 0);
    const at = (away: number, off: number): number[] => [x * away - z * off, 0, z * away + x * off];
    const shaft = [at(from, -half / 4), at(neck, -half / 4), at(neck, half / 4), at(from, half / 4)] as const;
    const [a, b, c, d] = shaft;
    return new Float32Array([a, b, c, a, c, d, at(neck, -half), at(to, 0), at(neck, half)].flat());
  }, [slope.fallsToDeg]);
  const out = direction(slope.fallsToDeg, 0);
  const level = (axis: 0 | 2, turned: number) =>
    extent.centre[axis] + radiusM * (neck * out[axis] + aside * turned);
  const signAt: Vec3 = [level(0, -out[2]), 0.01, level(2, out[0])];
  return (
    <group>
      <mesh
        position={[extent.centre[0], 0.004, extent.centre[2]]}
        scale={radiusM}
        renderOrder={-1}
        raycast={() => null}
      >
        <bufferGeometry key={slope.fallsToDeg}>
          <bufferAttribute attach="attributes-position" args={[corners, 3]} />
        </bufferGeometry>
        <meshBasicMaterial color={colours.quiet} side={2} />
      </mesh>
      <Sign image={image} at={signAt} />
    </group>
  );
}
