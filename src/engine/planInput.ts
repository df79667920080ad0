/** A tree file made ready for the core rooms. */
import { surroundingSurfaces } from '../document/surroundings.ts';
import type { TreeFile } from '../document/treeFile.ts';
import { siteOf, stanceOf, treeOf } from '../document/views.ts';
import type { PlanInput } from '../plan/input.ts';
import { figValues } from '../species/fig.ts';
import type { PlanOptions } from './engine.ts';

export const defaultWaves = 8;
export const defaultSeed = 1;
export const defaultWorlds = 32;

export function planInputOf(file: TreeFile, options: PlanOptions): PlanInput {
  return {
    tree: treeOf(file),
    stance: stanceOf(file),
    site: siteOf(file),
    values: figValues(file.settings),
    ripening: file.cultivar.ripening,
    bearsFirstCrop: file.cultivar.bearsFirstCrop,
    budBreakOn: file.season.budBreakOn,
    date: options.date ?? file.season.sketchedOn,
    potVolumeL: potVolumeL(file.standing.pot),
    fixed: surroundingSurfaces(file),
    viewpoint: file.site.viewpoint,
    seed: options.seed ?? defaultSeed,
    leafSeed: options.leafSeed ?? defaultSeed,
    waves: options.waves ?? defaultWaves,
    renewal: options.renewal,
    prove: options.prove,
    weather: options.weather,
    sky: options.sky,
    boldness: options.boldness,
    worlds: options.worlds ?? defaultWorlds,
  };
}

/** Soil in a pot, a cut cone filled to below its rim, litres; null without a pot. */
function potVolumeL(pot: TreeFile['standing']['pot']): number | null {
  if (pot === null) return null;
  const { topDiameterM: top, baseDiameterM: base, heightM, soilBelowRimM } = pot;
  const depthM = heightM - soilBelowRimM;
  const surface = base + ((top - base) * depthM) / heightM;
  return (1000 * Math.PI * depthM * (surface ** 2 + surface * base + base ** 2)) / 12;
}
