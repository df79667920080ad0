/** The scene as a 3D model, with its light as the colours of its corners. */
import { type GlbPart, writeGlb } from './glb.ts';
import type { SceneFile } from './sceneFile.ts';

export interface SceneGlbInput {
  readonly scene: SceneFile;
  readonly name: string;
  /** Names of shoots by id; what has none is called by its id. */
  readonly names: ReadonlyMap<string, string>;
  /** Light of each receiver as share of open sky, in the order of the scene's. */
  readonly receiverShares: readonly number[];
}

type Colour = readonly [number, number, number];

/** From the dark to the open sky: the two ends of the page's scale, as linear light. Our choice. */
const dark: Colour = [0, 0.016, 0.077];
const open: Colour = [0.99, 0.8, 0.045];
/** What light is not asked for. */
const plain: Colour = [0.16, 0.14, 0.12];
const crownOpacity = 0.35;

/** Linear between the ends; all that gets more than open sky has the colour of open sky. */
function colourOf(share: number | undefined): Colour {
  if (share === undefined) return plain;
  const t = Math.min(1, Math.max(0, share));
  const [r, g, b] = dark.map((low, i) => low + ((open[i] as number) - low) * t);
  return [r as number, g as number, b as number];
}

type SceneSurface = SceneFile['surfaces'][number];

function partOf(
  name: string,
  extras: GlbPart['extras'],
  surfaces: readonly SceneSurface[],
  shareOf: (surface: SceneSurface) => number | undefined,
): GlbPart {
  const corners = surfaces.flatMap((surface) => surface.triangles.flatMap((triangle) => triangle.flat()));
  const colours = surfaces.flatMap((surface) => {
    const colour = colourOf(shareOf(surface));
    return surface.triangles.flatMap(() => [...colour, ...colour, ...colour]);
  });
  const opacity = surfaces[0]?.material.kind === 'crown' ? crownOpacity : 1;
  return {
    name,
    extras,
    positions: Float32Array.from(corners),
    colours: Float32Array.from(colours),
    opacity,
  };
}

/**
 * One node for the leaves of a shoot, for the wood of an axis, for the surroundings and for the crowns; its extras tell
 * owner, kind and, for shoots, light and standard error. Leaves have the light of their node, the wood of a shoot
 * that of the shoot.
 */
export function sceneGlb({ scene, name, names, receiverShares }: SceneGlbInput): Uint8Array {
  const leafShare = new Map<SceneSurface, number>();
  scene.receivers.forEach(({ leaveOut }, i) => {
    const leaf = scene.surfaces[leaveOut ?? -1];
    if (leaf !== undefined) leafShare.set(leaf, receiverShares[i] as number);
  });
  const lights = new Map(scene.result.map((light) => [light.shoot, light]));
  const groups = new Map<string, SceneSurface[]>();
  for (const surface of scene.surfaces) {
    if (surface.triangles.length === 0) continue;
    const key = JSON.stringify([surface.owner, surface.material.kind]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [surface]);
    else group.push(surface);
  }
  const parts = Array.from(groups.values(), (surfaces) => {
    const { owner, material } = surfaces[0] as SceneSurface;
    const light = lights.get(owner ?? '');
    const extras = {
      owner,
      kind: material.kind,
      ...(light === undefined
        ? {}
        : { lightFraction: light.lightFraction, standardError: light.standardError }),
    };
    const called = owner === null ? material.kind : `${names.get(owner) ?? owner}, ${material.kind}`;
    return partOf(called, extras, surfaces, (surface) => leafShare.get(surface) ?? light?.lightFraction);
  });
  const { period, openSkyParMolM2Day, seed } = scene;
  return writeGlb(name, parts, { period, openSkyParMolM2Day, seed });
}
