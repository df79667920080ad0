/** The pot with its rim and soil. */
import { useEffect, useMemo } from 'react';
import { DoubleSide, LatheGeometry, Vector2 } from 'three';
import type { TreeFile } from '../../document/treeFile.ts';
import type { StageColours } from './stageModel.ts';

type PotSize = NonNullable<TreeFile['standing']['pot']>;

/** Outline of half a pot, from the middle of its base up over the rim and down inside to the soil. */
function profile({ topDiameterM, baseDiameterM, heightM, soilBelowRimM }: PotSize): Vector2[] {
  const [top, base] = [topDiameterM / 2, baseDiameterM / 2];
  const rimM = Math.min(0.16 * heightM, 0.06);
  const wallM = Math.min(0.02, 0.1 * top);
  const atRimFoot = base + (top - wallM - base) * (1 - rimM / heightM);
  const soilM = heightM - soilBelowRimM;
  return [
    new Vector2(0, 0),
    new Vector2(base, 0),
    new Vector2(base, 0),
    new Vector2(atRimFoot, heightM - rimM),
    new Vector2(atRimFoot, heightM - rimM),
    new Vector2(top, heightM - rimM),
    new Vector2(top, heightM - rimM),
    new Vector2(top, heightM),
    new Vector2(top, heightM),
    new Vector2(top - wallM, heightM),
    new Vector2(top - wallM, heightM),
    new Vector2(top - 1.4 * wallM, Math.max(0, soilM - 0.01)),
  ];
}

export interface PotProps {
  readonly file: TreeFile;
  readonly colours: StageColours;
  readonly fine: boolean;
}

export function Pot({ file, colours, fine }: PotProps) {
  const { pot, at } = file.standing;
  const geometry = useMemo(
    () => (pot === null ? null : new LatheGeometry(profile(pot), fine ? 48 : 24)),
    [pot, fine],
  );
  useEffect(() => () => geometry?.dispose(), [geometry]);
  if (pot === null || geometry === null) return null;
  const soilRadiusM = pot.topDiameterM / 2 - Math.min(0.02, 0.05 * pot.topDiameterM);
  return (
    <group position={[at[0], 0, -at[1]]}>
      <mesh geometry={geometry} raycast={() => null}>
        <meshLambertMaterial color={colours.pot} side={DoubleSide} />
      </mesh>
      <mesh
        position={[0, pot.heightM - pot.soilBelowRimM, 0]}
        rotation={[-Math.PI / 2, 0, 0]}
        raycast={() => null}
      >
        <circleGeometry args={[soilRadiusM, fine ? 40 : 20]} />
        <meshLambertMaterial color={colours.soil} />
      </mesh>
    </group>
  );
}
