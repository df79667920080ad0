/** All that a plan is made from. */
import type { Surface } from '../geometry/surface.ts';
import type { Stance, Tree } from '../geometry/tree.ts';
import type { SkySite, Weather } from '../light/sky/dayLight.ts';
import type { SkyKind } from '../light/sky/skyEnergy.ts';
import type { IsoDate, Site } from '../season/site.ts';
import type { FigValues } from '../species/fig.ts';
import type { Boldness } from './choice.ts';

export interface PlanInput {
  readonly tree: Tree;
  readonly stance: Stance;
  readonly site: Site & SkySite & { readonly groundReflectance: number };
  /** The species' parameters with the grower's settings put in. */
  readonly values: FigValues;
  readonly ripening: 'early' | 'mid' | 'late';
  readonly bearsFirstCrop: boolean;
  readonly budBreakOn: IsoDate;
  /** The day the plan is for: it decides what work is in season. */
  readonly date: IsoDate;
  /** Litres of soil that the roots have; null for a tree in open ground. */
  readonly potVolumeL: number | null;
  /** Ground, pot, walls, neighbours; owner 0. */
  readonly fixed: readonly Surface[];
  /** Where the grower looks from, if told: "the house" lies in this direction from the tree. */
  readonly viewpoint: { readonly name: string; readonly bearingDeg: number } | null;
  /** Of the rays. */
  readonly seed: number;
  /** Of what chance draws in the crown: another one is another crown by the same rules. */
  readonly leafSeed: number;
  /** Waves of rays; more waves, less doubt. */
  readonly waves: number;
  /** Whether ways to renew the tree are wanted, too. */
  readonly renewal?: boolean | undefined;
  /** Whether a close bound on the search is wanted, which may take a minute. */
  readonly prove?: boolean | undefined;
  /** Of every day of the season; normal when left out. */
  readonly weather?: Weather | undefined;
  /** How the light of the sky lies over it; uniform when left out. */
  readonly sky?: SkyKind | undefined;
  /** Worlds that the plan is tried in; none when left out. */
  readonly worlds?: number | undefined;
  /** How much is taken; balanced when left out. */
  readonly boldness?: Boldness | undefined;
}
