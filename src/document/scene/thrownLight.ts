/** What walls throw back in a traced scene, for any other ray tracer. */
import type { Vec3 } from '../../geometry/vec.ts';
import type { CellLight } from '../../light/directions.ts';
import type { Ledger } from '../../light/ledger.ts';
import { rayWeights } from '../../light/rayWeights.ts';
import { cornersOf, type Patch } from '../../light/thrown/patches.ts';

/** Beside the rest of a scene, whose walls are dark. */
export interface ThrownLight {
  /** How a share is found, in words. */
  readonly recipe: string;
  /** Pieces of walls, lit and seen from the front alone. */
  readonly patches: readonly {
    /** Index among the surfaces. */
    readonly surface: number;
    readonly reflectance: number;
    readonly normal: Vec3;
    /** In order round it, three or four. */
    readonly corners: readonly Vec3[];
  }[];
  /** What a sensor square to it gets of the patch's light, mean of the period's days; all waves together make the day. */
  readonly directions: readonly {
    readonly wave: number;
    readonly toSky: Vec3;
    readonly patch: number;
    readonly parMolM2: number;
  }[];
  /** Share of open sky that comes on top of that with dark walls. */
  readonly result: readonly { readonly shoot: string; readonly lightFraction: number }[];
}

const recipe =
  'On top of the light of the scene: from each receiver send a ray along every toSky. If it meets the front of the patch it brings ' +
  'parMolM2 x max(0, normal . toSky) x the product of the transmittances of all triangles it crosses before the patch, else nothing. ' +
  'Sum and divide as in the recipe of the scene.';

/** @param ledger of the scene with walls that throw light back */
export function thrownLight(
  ledger: Ledger,
  light: CellLight,
  patches: readonly Patch[],
  result: ThrownLight['result'],
): ThrownLight {
  const weights = rayWeights(ledger, light);
  const scale = light.openSkyParMolM2Day / ledger.waves.length;
  return {
    recipe,
    patches: patches.map((patch) => ({
      surface: patch.surface,
      reflectance: patch.reflectance,
      normal: patch.normal,
      corners: cornersOf(patch),
    })),
    directions: ledger.waves.flatMap(({ directions }, wave) =>
      directions.flatMap(({ toSky, thrownBy }, d) => {
        const parMolM2 = (weights[wave]?.weight[d] as number) * scale;
        return thrownBy !== undefined && parMolM2 > 0
          ? [{ wave, toSky, patch: thrownBy.patch, parMolM2 }]
          : [];
      }),
    ),
    result,
  };
}
