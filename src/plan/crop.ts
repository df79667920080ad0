/** The main crop: figs set by the light at their nodes, ripened by the heat that is left, and held by the roots. */

import type { KeepSet } from '../light/ledger.ts';
import { firstRipeHeatGdd8, type SeasonDates } from '../season/seasonDates.ts';
import type { FigValues } from '../species/fig.ts';
import { type FigSites, siteLight } from './figSites.ts';
import type { PlanInput } from './input.ts';
import { lightCurve } from './lightResponse.ts';
import { ripeChance } from './ripening.ts';

/** What turns light into figs, apart from the tree. */
export interface CropModel {
  /** Share of figs set at a share of open sky. */
  readonly response: (light: number) => number;
  /** Figs set at a node in full light. */
  readonly setInFullLight: number;
  /** Chance that the fig of the n-th bearing node ripens, so many degree-days late. */
  readonly ripeAt: (bearing: number, lateGdd8: number) => number;
  /** Figs that the roots can feed; infinite in open ground. */
  readonly held: number;
  /** How much later figs ripen on a tree that has set twice what it can feed, GDD8. */
  readonly lateAtTwiceGdd8: number;
}

export interface Crop {
  /** Figs set, before the tree drops what it cannot feed. */
  readonly set: number;
  readonly ripe: number;
}

/**
 * Figs that a pot can feed: growers report about 50 (20 to 100) on a mature tree in 38 to 57 L (common practice). Growth goes
 * with the rooting volume to the power 0.52: twice the pot made 43 % more plant in 65 trials (Poorter, Buhler, van Dusschoten, Climent &
 * Postma 2012, Funct. Plant Biol. 39:839-850; from memory). Dropped: feed and water, which move it as much.
 */
export const figsHeldInPot = (volumeL: number, values: FigValues): number =>
  values.figsHeldIn47L * (volumeL / 47) ** values.potSizeExponent;

/** Sharpness with which a crop nears what the roots can feed; our choice: 16 % are lost where as many are set as held. */
const heldPower = 4;

/** Share of the figs set that the tree keeps, at a load of figs set over figs held. */
export const keptAtLoad = (load: number): number => (1 + load ** heldPower) ** (-1 / heldPower);

export function cropModel(
  { values, ripening, potVolumeL }: Pick<PlanInput, 'values' | 'ripening' | 'potVolumeL'>,
  season: SeasonDates,
): CropModel {
  return {
    response: lightCurve(values),
    setInFullLight: values.nodeFruitSetFraction,
    ripeAt: ripeChance(values, ripening, season),
    held: potVolumeL === null ? Number.POSITIVE_INFINITY : figsHeldInPot(potVolumeL, values),
    lateAtTwiceGdd8: values.overloadLateGdd8,
  };
}

/** Heat from the appearing of a fig to ripe, GDD8. */
export const figToRipeGdd8 = ({ values, ripening }: Pick<PlanInput, 'values' | 'ripening'>): number =>
  firstRipeHeatGdd8(values, ripening) - values.firstFigHeatGdd8;

/** How late figs ripen at a load: nothing up to what is held, then in proportion, at most as at twice. */
export const lateAt = (load: number, lateAtTwiceGdd8: number): number =>
  lateAtTwiceGdd8 * Math.min(1, Math.max(0, load - 1));

/** The crop from the figs set by bearing node, entry 0 of which is unused. */
export function ripened(setByBearing: Float64Array, model: CropModel): Crop {
  let set = 0;
  for (let b = 1; b < setByBearing.length; b++) set += setByBearing[b] as number;
  const load = set / model.held;
  const late = lateAt(load, model.lateAtTwiceGdd8);
  let ripe = 0;
  for (let b = 1; b < setByBearing.length; b++) {
    const figs = setByBearing[b] as number;
    if (figs > 0) ripe += figs * model.ripeAt(b, late);
  }
  return { set, ripe: ripe * keptAtLoad(load) };
}

/**
 * A tree with its figs counted. `nodeLight`: per stage, the share of open sky of each node of its canopy, live; `keep`:
 * which owners stand, live.
 *
 *   set  = sum over standing sites of setInFullLight x response(light)
 *   ripe = keptAtLoad(set / held) x sum over bearing nodes of (set there) x ripeAt(bearing, late)
 *
 * Overload delays ripening as in apple: with 9 fruits for 5 on each cm2 of trunk 27 % and not 58 % were ripe at the
 * first pick (crop load trial on apple, grade figures as quoted in extension material; derived, see `overloadLateGdd8`). Dropped: which
 * figs a tree drops; all nodes lose alike.
 */
export class CropCount {
  private readonly sites: FigSites;
  private readonly nodeLight: readonly ArrayLike<number>[];
  private readonly keep: KeepSet;
  private readonly model: CropModel;
  /** Figs set by bearing node; entry 0 is unused. */
  private readonly byBearing: Float64Array;

  constructor(sites: FigSites, nodeLight: readonly ArrayLike<number>[], keep: KeepSet, model: CropModel) {
    this.sites = sites;
    this.nodeLight = nodeLight;
    this.keep = keep;
    this.model = model;
    this.byBearing = new Float64Array(1 + sites.bearing.reduce((most, b) => Math.max(most, b), 0));
  }

  count(): Crop {
    const { sites, byBearing, keep, model } = this;
    byBearing.fill(0);
    for (let i = 0; i < sites.count; i++) {
      if (keep[sites.owner[i] as number] !== 1) continue;
      const bearing = sites.bearing[i] as number;
      byBearing[bearing] = (byBearing[bearing] as number) + this.setAt(i);
    }
    return ripened(byBearing, model);
  }

  /** Figs set at a site, whether it stands or not. */
  setAt(site: number): number {
    const { model } = this;
    return model.setInFullLight * model.response(siteLight(this.sites, this.nodeLight, site));
  }

  /** By bearing node: share of the figs set there that ripens beside a crop of so many set. */
  ripeShares(set: number): Float64Array {
    const { model, byBearing } = this;
    const load = set / model.held;
    const [late, kept] = [lateAt(load, model.lateAtTwiceGdd8), keptAtLoad(load)];
    return Float64Array.from(byBearing, (_, bearing) =>
      bearing === 0 ? 0 : model.ripeAt(bearing, late) * kept,
    );
  }
}
