/** Walls, boxes and neighbouring crowns; what stands between the eye and the tree turns to glass. */
import { useFrame } from '@react-three/fiber';
import { useRef } from 'react';
import type { MeshLambertMaterial } from 'three';
import type { Surrounding, TreeFile } from '../../document/treeFile.ts';
import { rad } from '../../geometry/world.ts';
import type { Extent } from './extent.ts';
import type { StageColours } from './stageModel.ts';

/** Opacity of a solid behind the tree and of one in front of it. */
const [solid, glass] = [1, 0.16];

interface Slab {
  readonly centre: readonly [x: number, y: number, z: number];
  readonly size: readonly [x: number, y: number, z: number];
  readonly turnedRad: number;
}

type Crown = Extract<Surrounding, { kind: 'crown' }>;

/** A wall or box as a turned block in the world. */
export function slabOf(thing: Exclude<Surrounding, Crown>): Slab {
  if (thing.kind === 'box') {
    const [width, depth, height] = thing.sizeM;
    const [east, north] = thing.centre;
    return {
      centre: [east, height / 2, -north],
      size: [width, height, depth],
      turnedRad: -rad(thing.turnedDeg),
    };
  }
  const [[fromEast, fromNorth], [toEast, toNorth]] = [thing.from, thing.to];
  const lengthM = Math.hypot(toEast - fromEast, toNorth - fromNorth);
  return {
    centre: [(fromEast + toEast) / 2, thing.heightM / 2, -(fromNorth + toNorth) / 2],
    size: [lengthM, thing.heightM, thing.thicknessM],
    turnedRad: Math.atan2(toNorth - fromNorth, toEast - fromEast),
  };
}

function Block({ slab, extent, colour }: { slab: Slab; extent: Extent; colour: string }) {
  const material = useRef<MeshLambertMaterial>(null);
  useFrame(({ camera }) => {
    if (material.current === null) return;
    const towardsTree = [extent.centre[0] - slab.centre[0], extent.centre[2] - slab.centre[2]] as const;
    const towardsEye = [camera.position.x - slab.centre[0], camera.position.z - slab.centre[2]] as const;
    // Across a wall only its thin direction counts: which side of it the eye is on.
    const thin =
      slab.size[2] < slab.size[0]
        ? [Math.sin(slab.turnedRad), Math.cos(slab.turnedRad)]
        : [Math.cos(slab.turnedRad), -Math.sin(slab.turnedRad)];
    const side = (v: readonly [number, number]): number =>
      v[0] * (thin[0] as number) + v[1] * (thin[1] as number);
    const inFront = side(towardsTree) * side(towardsEye) < 0;
    material.current.opacity = inFront ? glass : solid;
    material.current.transparent = inFront;
    material.current.depthWrite = !inFront;
  });
  return (
    <mesh position={[...slab.centre]} rotation={[0, slab.turnedRad, 0]} raycast={() => null}>
      <boxGeometry args={[...slab.size]} />
      <meshLambertMaterial ref={material} color={colour} />
    </mesh>
  );
}

function CrownShape({ crown, colour }: { crown: Crown; colour: string }) {
  const [halfEast, halfNorth, halfUp] = crown.halfSizeM;
  const [east, north] = crown.centre;
  return (
    <mesh
      position={[east, crown.centreHeightM, -north]}
      scale={[halfEast, halfUp, halfNorth]}
      raycast={() => null}
    >
      <sphereGeometry args={[1, 24, 16]} />
      <meshLambertMaterial color={colour} transparent opacity={0.4} depthWrite={false} />
    </mesh>
  );
}

export interface SurroundingsProps {
  readonly things: TreeFile['site']['surroundings'];
  readonly extent: Extent;
  readonly colours: StageColours;
}

export function Surroundings({ things, extent, colours }: SurroundingsProps) {
  return things.map((thing, i) => {
    const key = `${thing.name} ${i}`;
    if (thing.kind === 'crown') return <CrownShape key={key} crown={thing} colour={colours.neighbour} />;
    return <Block key={key} slab={slabOf(thing)} extent={extent} colour={colours.wall} />;
  });
}
