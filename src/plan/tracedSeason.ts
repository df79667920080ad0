/** A tree's season with its light traced, stage by stage: what every question of the plan is asked of. */
import type { Canopy } from '../growth/canopy.ts';
import { type CutEnd, withCutEnds } from '../growth/cutEnds.ts';
import { growCanopy } from '../growth/growCanopy.ts';
import type { CellLight } from '../light/directions.ts';
import type { Ledger } from '../light/ledger.ts';
import { cellLight } from '../light/sky/cellLight.ts';
import type { SeasonDates } from '../season/seasonDates.ts';
import type { Period } from '../season/site.ts';
import { type CropModel, cropModel, figToRipeGdd8 } from './crop.ts';
import { type FigSites, figSites, nodesWithFigs } from './figSites.ts';
import type { PlanInput } from './input.ts';
import { type NodePlaces, nodePlaces } from './nodePlaces.ts';
import { type LightStage, lightStages, wholeSeason } from './stages.ts';

/** Owners have the same numbers at all stages. */
export interface TracedStage {
  readonly stage: LightStage;
  readonly canopy: Canopy;
  /** Of the stage's days. */
  readonly light: CellLight;
  /** Nodes of the canopy whose light is asked for: all at full leaf, beside it those with figs. */
  readonly asked: readonly number[];
  /** Receivers are those nodes. That of full leaf holds for the whole season's light, too. */
  readonly ledger: Ledger;
}

export interface TracedSeason {
  readonly stages: readonly TracedStage[];
  /** That of full leaf: the canopy that is drawn, and whose light is shown. */
  readonly full: TracedStage;
  readonly places: NodePlaces;
  /** From leaf-out to the end of ripening, mean of a normal year. */
  readonly light: CellLight;
  readonly sites: FigSites;
  readonly crop: CropModel;
}

/** Per node of the canopy: its receiver in the ledger, -1 where its light is not asked for. */
export function receiverOf({ canopy, asked }: Pick<TracedStage, 'canopy' | 'asked'>): Int32Array {
  const receiver = new Int32Array(canopy.nodes.length).fill(-1);
  asked.forEach((node, r) => {
    receiver[node] = r;
  });
  return receiver;
}

/** Light worked out already, by input and period. */
const knownLight = new WeakMap<PlanInput, Map<string, CellLight>>();

function lightOver(input: PlanInput, period: Period): CellLight {
  const known = knownLight.get(input) ?? new Map<string, CellLight>();
  knownLight.set(input, known);
  const key = `${period.from} ${period.to}`;
  const { site, weather, sky } = input;
  const light =
    known.get(key) ??
    cellLight({
      site,
      groundReflectance: site.groundReflectance,
      period,
      skyKind: sky ?? 'uniform',
      ...(weather && { weather }),
    });
  known.set(key, light);
  return light;
}

/** The light of a season's stages and of the whole of it. */
export type LightOf = (period: Period, of: LightStage['name'] | 'season') => CellLight;

/** Light from leaf-out to the end of ripening, mean of a normal year. */
export const seasonLight = (input: PlanInput, { leafOutOn, ripeningEndsOn }: SeasonDates): CellLight =>
  lightOver(input, { from: leafOutOn, to: ripeningEndsOn });

/** Whether the canopy answers to heat and cuts: only buds grow, shoots in leaf stand as they were measured. */
export const grows = ({ tree }: Pick<PlanInput, 'tree'>): boolean =>
  tree.axes.some(
    ({ condition, foliage, buds }) => condition === 'live' && foliage === null && buds.length > 0,
  );

/**
 * Everything that stands on the tree today, grown as strong as if the ids in `notSharing` took no part of the
 * reserve; not traced yet.
 * @param ends of branches that may be shortened: they can be taken away
 * @param lightOf for light that is known already
 */
export function untracedSeason(
  input: PlanInput,
  season: SeasonDates,
  notSharing: ReadonlySet<string>,
  ends: readonly CutEnd[],
  lightOf: LightOf = (period) => lightOver(input, period),
): TracedSeason {
  const { tree, stance, values, seed, leafSeed } = input;
  const wanted = grows(input) ? lightStages(input, season) : wholeSeason(input, season);
  const grown = wanted.map((stage) => {
    const { heatGdd8 } = stage;
    const whole = growCanopy({ tree, stance, values, heatGdd8, seed: leafSeed, gone: new Set(), notSharing });
    return { stage, canopy: withCutEnds(whole, ends) };
  });
  const crop = cropModel(input, season);
  const sites = figSites(grown, values, figToRipeGdd8(input), (bearing) => crop.ripeAt(bearing, 0));
  const stages = grown.map(({ stage, canopy }, s): TracedStage => {
    const asked = stage.name === 'full leaf' ? [...canopy.nodes.keys()] : nodesWithFigs(sites, s);
    const ledger = { ownerCount: canopy.owners.length, receiverCount: asked.length, waves: [], seed };
    return { stage, canopy, asked, ledger, light: lightOf(stage.period, stage.name) };
  });
  const full = stages.find(({ stage }) => stage.name === 'full leaf') as TracedStage;
  const light = lightOf({ from: season.leafOutOn, to: season.ripeningEndsOn }, 'season');
  return { stages, full, places: nodePlaces(full.canopy), light, sites, crop };
}
