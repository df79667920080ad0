/** Ground that fades into the paper, the tree's shadow on it, a compass and a stick to measure by. */
import { useEffect, useMemo } from 'react';
import { BufferGeometry, Float32BufferAttribute } from 'three';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import { direction } from '../../geometry/world.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { linearRgbOf } from '../theme/srgb.ts';
import { compassRadiusM, type Extent } from './extent.ts';
import { wordImage } from './label.ts';
import { Sign } from './Sign.tsx';
import { shadowTexture } from './shadow.ts';
import type { StageColours, SunView } from './stageModel.ts';

const flat: [number, number, number] = [-Math.PI / 2, 0, 0];

/** A disc of radius 1 that is solid in the middle and gone at the edge. */
function fadingDisc(colour: string): BufferGeometry {
  const [red, green, blue] = linearRgbOf(colour);
  const rings = [
    [0, 1],
    [0.45, 0.95],
    [0.75, 0.5],
    [1, 0],
  ] as const;
  const around = 48;
  const [positions, colours, index]: [number[], number[], number[]] = [[], [], []];
  rings.forEach(([radius, alpha], ring) => {
    for (let i = 0; i < around; i++) {
      const a = (2 * Math.PI * i) / around;
      positions.push(radius * Math.cos(a), radius * Math.sin(a), 0);
      colours.push(red, green, blue, alpha);
      if (ring === 0) continue;
      const [inner, outer] = [(ring - 1) * around, ring * around];
      const next = (i + 1) % around;
      index.push(inner + i, outer + i, outer + next, inner + i, outer + next, inner + next);
    }
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(positions, 3));
  geometry.setAttribute('color', new Float32BufferAttribute(colours, 4));
  geometry.setIndex(index);
  return geometry;
}

/** One ring with longer ticks at the four winds, radius 1. */
function compassRose(): BufferGeometry {
  const ends: number[] = [];
  for (let bearing = 0; bearing < 360; bearing += 5) {
    const [from, to] = [direction(bearing, 0), direction(bearing + 5, 0)];
    ends.push(...from, ...to);
    if (bearing % 15 !== 0) continue;
    const inner = bearing % 90 === 0 ? 0.9 : bearing % 45 === 0 ? 0.94 : 0.97;
    ends.push(...from, from[0] * inner, 0, from[2] * inner);
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(ends, 3));
  return geometry;
}

function Winds({ extent, radiusM, colours }: { extent: Extent; radiusM: number; colours: StageColours }) {
  const images = useMemo(
    () =>
      ['N', 'E', 'S', 'W'].map((letter) =>
        wordImage(letter, 15, letter === 'N' ? colours.ink : colours.quiet, colours.paper),
      ),
    [colours],
  );
  return images.map((image, i) => {
    const out = direction(90 * i, 0);
    const at: Vec3 = [
      extent.centre[0] + out[0] * radiusM * 1.08,
      0.01,
      extent.centre[2] + out[2] * radiusM * 1.08,
    ];
    return <Sign key={90 * i} image={image} at={at} />;
  });
}

/** Half the compass needle lies on the ground towards the north. */
const needle = new Float32Array([0, 0, -0.9, -0.022, 0, -0.78, 0.022, 0, -0.78]);

export interface GroundProps {
  readonly canopy: Canopy;
  readonly standing: Uint8Array;
  readonly file: TreeFile;
  readonly extent: Extent;
  readonly sun: SunView['now'];
  readonly colours: StageColours;
}

export function Ground({ canopy, standing, file, extent, sun, colours }: GroundProps) {
  const { centre, reachM } = extent;
  const disc = useMemo(() => fadingDisc(colours.ground), [colours.ground]);
  const rose = useMemo(() => compassRose(), []);
  const halfSizeM = 2.2 * reachM;
  const shadow = useMemo(
    () => shadowTexture(canopy, standing, file, sun, centre, halfSizeM),
    [canopy, standing, file, sun, centre, halfSizeM],
  );
  useEffect(() => () => disc.dispose(), [disc]);
  useEffect(() => () => rose.dispose(), [rose]);
  useEffect(() => () => shadow.dispose(), [shadow]);
  const radiusM = compassRadiusM(extent);
  return (
    <group>
      <group position={[centre[0], 0, centre[2]]}>
        <mesh
          geometry={disc}
          rotation={flat}
          position={[0, -0.004, 0]}
          scale={2.4 * reachM}
          renderOrder={-3}
          raycast={() => null}
        >
          <meshBasicMaterial vertexColors transparent depthWrite={false} />
        </mesh>
        <mesh rotation={flat} position={[0, 0.001, 0]} renderOrder={-2} raycast={() => null}>
          <planeGeometry args={[2 * halfSizeM, 2 * halfSizeM]} />
          <meshBasicMaterial map={shadow} color="#000000" transparent opacity={0.26} depthWrite={false} />
        </mesh>
        <lineSegments
          geometry={rose}
          scale={radiusM}
          position={[0, 0.003, 0]}
          renderOrder={-1}
          raycast={() => null}
        >
          <lineBasicMaterial color={colours.quiet} transparent opacity={0.55} depthWrite={false} />
        </lineSegments>
        <mesh scale={radiusM} position={[0, 0.003, 0]} renderOrder={-1} raycast={() => null}>
          <bufferGeometry>
            <bufferAttribute attach="attributes-position" args={[needle, 3]} />
          </bufferGeometry>
          <meshBasicMaterial color={colours.ink} side={2} />
        </mesh>
      </group>
      <Winds extent={extent} radiusM={radiusM} colours={colours} />
    </group>
  );
}
