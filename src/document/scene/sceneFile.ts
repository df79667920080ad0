/** What the tracer sees and what it answers, for any other ray tracer. */
import type { Receiver, Surface } from '../../geometry/surface.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import type { Canopy } from '../../growth/canopy.ts';
import type { CellLight } from '../../light/directions.ts';
import type { Ledger } from '../../light/ledger.ts';
import { rayWeights } from '../../light/rayWeights.ts';
import type { Period } from '../../season/site.ts';
import type { Triangle } from './revolve.ts';
import { surfaceTriangles } from './surfaceTriangles.ts';
import type { ThrownLight } from './thrownLight.ts';

export interface SceneMaterial {
  readonly kind: 'leaf' | 'wood' | 'surroundings' | 'crown';
  /** Share of the light that passes at each triangle that is crossed; what is thrown back is told, not used. */
  readonly transmittance: number;
  readonly reflectance: number;
  /** Of a crown alone, a cloud of leaves within a closed surface: exp(-extinctionPerM x metres inside) passes, no less. */
  readonly extinctionPerM?: number;
}

export interface SceneFile {
  readonly format: 'boughlight-scene';
  readonly version: 1;
  readonly frame: { readonly x: 'east'; readonly y: 'up'; readonly z: 'south'; readonly unit: 'm' };
  readonly period: Period;
  readonly seed: number;
  readonly openSkyParMolM2Day: number;
  /** What the light was made from. */
  readonly energy: {
    readonly basis: 'hourly' | 'clearness' | 'sunshine' | 'clear sky';
    readonly source: string;
  };
  /** How a share is found from the rest, in words. */
  readonly recipe: string;
  /** The owner is the id of the axis or bud; null for what no cut takes away. */
  readonly surfaces: readonly {
    readonly owner: string | null;
    readonly material: SceneMaterial;
    readonly triangles: readonly Triangle[];
  }[];
  /** `leaveOut` is the index of the surface that never shades it: its own leaf, in whose plane it lies; null for none. */
  readonly receivers: readonly {
    readonly shoot: string;
    readonly node: number;
    readonly point: Vec3;
    readonly normal: Vec3;
    readonly leaveOut: number | null;
  }[];
  /** What a sensor square to it gets from the direction, mean of the period's days; all waves together make the day. */
  readonly directions: readonly {
    readonly wave: number;
    readonly toSky: Vec3;
    readonly beamParMolM2: number;
    readonly skyParMolM2: number;
  }[];
  readonly result: readonly {
    readonly shoot: string;
    readonly lightFraction: number;
    readonly standardError: number;
  }[];
  /** Where walls throw light back: that light, apart; all else in the file is of dark walls. */
  readonly thrown?: ThrownLight;
}

export interface SceneInput {
  readonly canopy: Canopy;
  readonly surfaces: readonly Surface[];
  /** Level sensors: one for each of the canopy's nodes. */
  readonly receivers: readonly Receiver[];
  readonly ledger: Ledger;
  readonly light: CellLight;
  readonly period: Period;
  readonly energy: SceneFile['energy'];
  readonly result: SceneFile['result'];
}

const recipe =
  'From each receiver send a ray along every toSky. It brings (beamParMolM2 + skyParMolM2) x max(0, normal . toSky) x ' +
  'the product of the transmittances of all triangles it crosses (for a crown, exp(-extinctionPerM x metres inside)). ' +
  'Leave out the surface named by leaveOut: the ray starts in its plane, so starting 0.0001 m along the ray does the ' +
  'same. Sum over the directions and divide by openSkyParMolM2Day; the mean over the receivers of a shoot is its ' +
  'lightFraction. Wood is drawn with 12 flat sides of the same mean width as our round wood. The standard error is the ' +
  'spread of the waves (each times their number), over the root of their number.';

/** Nanometres: finer than any effect, and without the noise of the last digits. */
const rounded = ([x, y, z]: Vec3): Vec3 => [Number(x.toFixed(9)), Number(y.toFixed(9)), Number(z.toFixed(9))];

function materialOf({ shape, owner, optics }: Surface, extinctionPerM: number | null): SceneMaterial {
  const { transmittance, reflectance } = optics;
  if (extinctionPerM !== null) return { kind: 'crown', transmittance: 1, reflectance: 0, extinctionPerM };
  const kind = shape === 'blade' ? 'leaf' : owner === 0 ? 'surroundings' : 'wood';
  return { kind, transmittance, reflectance };
}

/** Directions that bring nothing are left out. */
function directionsOf(ledger: Ledger, light: CellLight): SceneFile['directions'] {
  const weights = rayWeights(ledger, light);
  const scale = light.openSkyParMolM2Day / ledger.waves.length;
  return ledger.waves.flatMap(({ directions }, wave) =>
    directions.flatMap(({ toSky, kind }, d) => {
      const parMolM2 = (weights[wave]?.weight[d] as number) * scale;
      const [beamParMolM2, skyParMolM2] = kind === 'beam' ? [parMolM2, 0] : [0, parMolM2];
      return parMolM2 > 0 ? [{ wave, toSky, beamParMolM2, skyParMolM2 }] : [];
    }),
  );
}

export function sceneFile(input: SceneInput): SceneFile {
  const { canopy, surfaces, receivers, ledger, light, period, energy, result } = input;
  const idOf = (owner: number): string | null => canopy.owners[owner]?.id ?? null;
  const triangles = surfaceTriangles(surfaces);
  return {
    format: 'boughlight-scene',
    version: 1,
    frame: { x: 'east', y: 'up', z: 'south', unit: 'm' },
    period: { from: period.from, to: period.to },
    seed: ledger.seed,
    openSkyParMolM2Day: light.openSkyParMolM2Day,
    energy,
    recipe,
    surfaces: surfaces.map((surface, s) => ({
      owner: idOf(surface.owner),
      material: materialOf(surface, surface.shape === 'cloud' ? surface.extinctionPerM : null),
      triangles: (triangles[s] as Triangle[]).map(([a, b, c]) => [rounded(a), rounded(b), rounded(c)]),
    })),
    receivers: canopy.nodes.map(({ owner, node }, i) => {
      const { point, normal, onSurface } = receivers[i] as Receiver;
      return {
        shoot: idOf(owner) as string,
        node,
        point: rounded(point),
        normal,
        leaveOut: onSurface < 0 ? null : onSurface,
      };
    }),
    directions: directionsOf(ledger, light),
    result,
  };
}
