/** The sun's way over the day round the tree, with its hours, and the sun itself. */
import { useMemo } from 'react';
import { add, scale, type Vec3 } from '../../geometry/vec.ts';
import { direction } from '../../geometry/world.ts';
import type { Extent } from './extent.ts';
import { FatLines } from './FatLines.tsx';
import { wordImage } from './label.ts';
import { Sign } from './Sign.tsx';
import type { StageColours, SunPoint, SunView } from './stageModel.ts';
import { aboveHorizon } from './sunRuns.ts';

function Hour({ point, at, colours }: { point: SunPoint; at: Vec3; colours: StageColours }) {
  const { label } = point;
  const image = useMemo(() => wordImage(label ?? '', 12, colours.quiet, colours.paper), [label, colours]);
  return <Sign image={image} at={at} anchor={[0.5, -0.15]} />;
}

/** From each point to the next, on a sphere of radius 1. */
function stretchesOf(run: readonly SunPoint[]): number[] {
  const points = run.map(({ azimuthDeg, altitudeDeg }) => direction(azimuthDeg, altitudeDeg));
  return points.slice(1).flatMap((to, i) => [...(points[i] as Vec3), ...to]);
}

export interface SunPathProps {
  readonly sun: SunView;
  readonly extent: Extent;
  readonly colours: StageColours;
}

export function SunPath({ sun, extent, colours }: SunPathProps) {
  const radiusM = 1.12 * Math.max(extent.reachM, extent.heightM * 0.9);
  const place = (p: {
    readonly azimuthDeg: number;
    readonly altitudeDeg: number;
  }): [number, number, number] => [
    ...add(extent.centre, scale(direction(p.azimuthDeg, p.altitudeDeg), radiusM)),
  ];
  const runs = useMemo(() => aboveHorizon(sun.path).filter((run) => run.length > 1), [sun]);
  // Round a tree of radius 1, so that it is left as it is while the tree is pulled.
  const way = useMemo(() => new Float32Array(runs.flatMap(stretchesOf)), [runs]);
  const hours = runs.flat().filter((point) => point.label !== null);
  const { now } = sun;
  return (
    <>
      {way.length > 0 && (
        <group position={[...extent.centre]} scale={radiusM}>
          <FatLines ends={way} colour={colours.sun} widthPx={1.5} />
        </group>
      )}
      {hours.map((point) => (
        <group key={point.azimuthDeg}>
          <mesh position={place(point)} raycast={() => null}>
            <sphereGeometry args={[radiusM * 0.009, 8, 6]} />
            <meshBasicMaterial color={colours.sun} />
          </mesh>
          <Hour point={point} at={place(point)} colours={colours} />
        </group>
      ))}
      {now !== null && now.altitudeDeg >= 0 && (
        <mesh position={place(now)} raycast={() => null}>
          <sphereGeometry args={[radiusM * 0.026, 20, 12]} />
          <meshBasicMaterial color={colours.sun} />
        </mesh>
      )}
    </>
  );
}
