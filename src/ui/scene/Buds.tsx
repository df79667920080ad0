/** Buds that have not grown into a shoot, sitting on the bark. */
import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { Color, ConeGeometry, type InstancedMesh, Matrix4, Quaternion, Vector3 } from 'three';
import { add, normalize, scale, type Vec3 } from '../../geometry/vec.ts';
import type { DormantBud } from './dormantBuds.ts';
import type { StageColours } from './stageModel.ts';

/** Drawn somewhat larger than life so that they can be seen; our choice. */
const budLengthM = 0.026;
const budRadiusM = 0.0085;

const upright = new Vector3(0, 1, 0);

function worldFromBud(bud: DormantBud, grown: number): Matrix4 {
  const points = normalize(add(scale(bud.outward, 0.6), bud.along));
  const centre: Vec3 = add(bud.point, scale(points, 0.35 * budLengthM * grown));
  const turn = new Quaternion().setFromUnitVectors(upright, new Vector3(...points));
  const [radiusM, lengthM] = [budRadiusM * grown, budLengthM * grown];
  return new Matrix4().compose(new Vector3(...centre), turn, new Vector3(radiusM, lengthM, radiusM));
}

export interface BudsProps {
  readonly buds: readonly DormantBud[];
  readonly selectedId: string | null;
  readonly hoveredId: string | null;
  readonly colours: StageColours;
}

export function Buds({ buds, selectedId, hoveredId, colours }: BudsProps) {
  const mesh = useRef<InstancedMesh>(null);
  const invalidate = useThree((state) => state.invalidate);
  const geometry = useMemo(() => new ConeGeometry(1, 1, 6), []);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useLayoutEffect(() => {
    buds.forEach((bud, i) => {
      const marked = bud.id === selectedId || bud.id === hoveredId;
      mesh.current?.setMatrixAt(i, worldFromBud(bud, marked ? 1.7 : 1));
      mesh.current?.setColorAt(i, new Color(bud.id === selectedId ? colours.select : colours.bud));
    });
    if (mesh.current === null) return;
    mesh.current.instanceMatrix.needsUpdate = true;
    if (mesh.current.instanceColor !== null) mesh.current.instanceColor.needsUpdate = true;
    mesh.current.computeBoundingSphere();
    invalidate();
  }, [buds, selectedId, hoveredId, colours, invalidate]);
  if (buds.length === 0) return null;
  return (
    <instancedMesh ref={mesh} args={[geometry, undefined, buds.length]} raycast={() => null}>
      <meshLambertMaterial />
    </instancedMesh>
  );
}
