/** Where the tree or its pot stands it is a little darker: without that it seems to float. */
import { useEffect, useMemo } from 'react';
import { BufferGeometry, Float32BufferAttribute } from 'three';
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf } from '../../document/views.ts';
import type { Vec3 } from '../../geometry/vec.ts';

/** Radius, as a share of that of the shade, and how dark it is there. Our choice. */
const rings = [
  [0, 0.5],
  [0.55, 0.45],
  [0.75, 0.16],
  [1, 0],
] as const;
const around = 32;
/** The shade reaches so many radii of what stands. */
const reaches = { pot: 1.45, trunk: 3.2 } as const;
const aboveM = 0.0025;

/** A level disc of radius 1 that is dark in the middle and gone at the edge. */
function shadeDisc(): BufferGeometry {
  const [positions, colours, index]: [number[], number[], number[]] = [[], [], []];
  rings.forEach(([radius, dark], ring) => {
    for (let i = 0; i < around; i++) {
      const a = (2 * Math.PI * i) / around;
      positions.push(radius * Math.cos(a), 0, radius * Math.sin(a));
      colours.push(0, 0, 0, dark);
      if (ring === 0) continue;
      const [inner, outer, next] = [(ring - 1) * around, ring * around, (i + 1) % around];
      index.push(inner + i, outer + next, outer + i, inner + i, inner + next, outer + next);
    }
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(positions, 3));
  geometry.setAttribute('color', new Float32BufferAttribute(colours, 4));
  geometry.setIndex(index);
  return geometry;
}

interface Spot {
  readonly under: 'trunk' | 'pot';
  readonly at: Vec3;
  readonly radiusM: number;
}

/** Under the trunk, and under the pot where there is one. */
export function contacts(file: TreeFile): readonly Spot[] {
  const { foot } = stanceOf(file);
  const { pot } = file.standing;
  const trunkM = (file.axes[0]?.baseDiameterM ?? 0) / 2;
  const trunk = { under: 'trunk', at: foot, radiusM: reaches.trunk * trunkM } as const;
  if (pot === null) return [trunk];
  return [trunk, { under: 'pot', at: [foot[0], 0, foot[2]], radiusM: (reaches.pot * pot.baseDiameterM) / 2 }];
}

export function ContactShade({ file }: { readonly file: TreeFile }) {
  const disc = useMemo(() => shadeDisc(), []);
  useEffect(() => () => disc.dispose(), [disc]);
  return contacts(file).map(({ under, at: [x, y, z], radiusM }) => (
    <mesh
      key={under}
      geometry={disc}
      position={[x, y + aboveM, z]}
      scale={[radiusM, 1, radiusM]}
      renderOrder={-1}
      raycast={() => null}
    >
      <meshBasicMaterial vertexColors transparent depthWrite={false} />
    </mesh>
  ));
}
