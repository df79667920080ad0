/** What stands round the tree and over it: walls, fences, hedges, houses, neighbours, skyline, slope, film or net. */
import { useMemo } from 'react';
import type { Surrounding, TreeFile } from '../../document/treeFile.ts';
import { Block } from './Block.tsx';
import { CoverHint } from './CoverHint.tsx';
import type { Extent } from './extent.ts';
import { Fence } from './Fence.tsx';
import { horizonHeight } from './horizonHeight.ts';
import { Skyline } from './Skyline.tsx';
import { SlopeArrow } from './SlopeArrow.tsx';
import { slabOf } from './slab.ts';
import type { StageColours } from './stageModel.ts';

/** Leaves too far to be drawn one by one let some light through. */
const leafyOpacity = { hedge: 0.8, crown: 0.4 } as const;

type Crown = Extract<Surrounding, { kind: 'crown' }>;

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
      <meshLambertMaterial color={colour} transparent opacity={leafyOpacity.crown} depthWrite={false} />
    </mesh>
  );
}

export interface SurroundingsProps {
  readonly site: TreeFile['site'];
  readonly extent: Extent;
  readonly colours: StageColours;
}

type ThingProps = Omit<SurroundingsProps, 'site'> & { readonly thing: Surrounding };

function Thing({ thing, extent, colours }: ThingProps) {
  if (thing.kind === 'crown') return <CrownShape crown={thing} colour={colours.neighbour} />;
  const slab = slabOf(thing);
  if (thing.kind === 'fence')
    return <Fence slab={slab} openFraction={thing.openFraction} extent={extent} colour={colours.bark} />;
  if (thing.kind === 'hedge')
    return <Block slab={slab} extent={extent} colour={colours.neighbour} opacity={leafyOpacity.hedge} />;
  const ridgeM = thing.kind === 'box' ? thing.ridgeHeightM : undefined;
  return <Block slab={slab} extent={extent} colour={colours.wall} ridgeM={ridgeM} />;
}

export function Surroundings({ site, extent, colours }: SurroundingsProps) {
  const { surroundings, skyline, slope, cover } = site;
  const heightDeg = useMemo(
    () => horizonHeight({ ...(skyline && { skyline }), ...(slope && { slope }) }),
    [skyline, slope],
  );
  return (
    <>
      {surroundings.map((thing, i) => (
        <Thing key={`${thing.name} ${i}`} thing={thing} extent={extent} colours={colours} />
      ))}
      {heightDeg === null ? null : (
        <Skyline heightDeg={heightDeg} extent={extent} colour={colours.neighbour} />
      )}
      {slope === undefined ? null : <SlopeArrow slope={slope} extent={extent} colours={colours} />}
      {cover === undefined ? null : <CoverHint cover={cover} extent={extent} colours={colours} />}
    </>
  );
}
