/** A banded stick of a known length beside the tree. */
import { useMemo } from 'react';
import type { Vec3 } from '../../geometry/vec.ts';
import { direction } from '../../geometry/world.ts';
import type { Extent } from './extent.ts';
import { wordImage } from './label.ts';
import { Sign } from './Sign.tsx';
import type { StageColours } from './stageModel.ts';

const sticks = {
  metric: { bandM: 0.1, bands: 10, text: '1 m' },
  us: { bandM: 0.3048, bands: 3, text: '3 ft' },
} as const;

const radiusM = 0.009;
/** Far enough from the trunk not to stand in the pot. */
const clearOfPotM = 0.42;

export interface MeasuringStickProps {
  readonly extent: Extent;
  readonly units: 'metric' | 'us';
  readonly colours: StageColours;
}

export function MeasuringStick({ extent, units, colours }: MeasuringStickProps) {
  const { bandM, bands, text } = sticks[units];
  const image = useMemo(() => wordImage(text, 14, colours.ink, colours.paper), [text, colours]);
  const out = direction(250, 0);
  const awayM = Math.max(clearOfPotM, 0.5 * extent.reachM);
  const [x, z] = [extent.centre[0] + out[0] * awayM, extent.centre[2] + out[2] * awayM];
  const top: Vec3 = [x, bandM * bands, z];
  return (
    <>
      {Array.from({ length: bands }, (_, i) => (
        <mesh key={i * bandM} position={[x, (i + 0.5) * bandM, z]} raycast={() => null}>
          <cylinderGeometry args={[radiusM, radiusM, bandM, 8]} />
          <meshBasicMaterial color={i % 2 === 0 ? colours.ink : colours.bark} />
        </mesh>
      ))}
      <Sign image={image} at={top} anchor={[0.5, -0.1]} onTop />
    </>
  );
}
