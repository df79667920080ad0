/** Walls, boxes and neighbouring crowns; what stands between the eye and the tree turns to glass. */
import { useFrame } from '@react-three/fiber';
import { useRef } from 'react';
import type { MeshLambertMaterial } from 'three';
import type { Surrounding, TreeFile } from '../../document/treeFile.ts';
import type { Extent } from './extent.ts';
import { type Slab, slabOf, standsBetween } from './slab.ts';
import type { StageColours } from './stageModel.ts';

/** Opacity of a solid behind the tree and of one in front of it. */
const [solid, glass] = [1, 0.12];

type Crown = Extract<Surrounding, { kind: 'crown' }>;

function Block({ slab, extent, colour }: { slab: Slab; extent: Extent; colour: string }) {
  const material = useRef<MeshLambertMaterial>(null);
  useFrame(({ camera }) => {
    if (material.current === null) return;
    const { x, y, z } = camera.position;
    // Seen from the sun, a wall hides what it shades.
    const inFront = 'isPerspectiveCamera' in camera && standsBetween(slab, extent.centre, [x, y, z]);
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
    const colour = thing.kind === 'hedge' ? colours.neighbour : colours.wall;
    return <Block key={key} slab={slabOf(thing)} extent={extent} colour={colour} />;
  });
}
