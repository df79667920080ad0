/** What each cut brings: the plan with it against the plan without it, on the same rays. */
import type { Gain, IfKept } from './cut.ts';
import { shootOf } from './figSites.ts';
import type { TracedSeason } from './tracedSeason.ts';
import { type TrialContext, type TrialCut, type Tried, tryThese } from './trial.ts';

/** Changes of light smaller than this are not listed, share of open sky; our choice. */
const leastShareGain = 0.002;
/** Shoots listed, at most. */
const mostShoots = 3;

export interface CutEffect {
  readonly gain: Gain;
  readonly ifKept: IfKept;
  /** Light and figs of what goes, were it kept, and the figs that it would cost the others. */
  readonly ownShare: number;
  readonly figsIfKept: number;
  readonly figsForOthers: number;
  /** Those of them lost to its shade; the rest because the roots feed only so many. */
  readonly figsByShade: number;
}

/** Effects in the order of the cuts. */
export function* cutEffects(context: TrialContext): Generator<CutEffect, void, void> {
  const { cuts, planned } = context;
  const plan = tryThese(context, planned);
  for (const cut of cuts) {
    const others = planned.filter((other) => other !== cut);
    const isPlanned = others.length < planned.length;
    const whole = isPlanned ? plan : tryThese(context, [...planned, cut], true);
    yield effectOf(context, cut, whole, isPlanned ? tryThese(context, others, true) : plan);
  }
}

function effectOf(context: TrialContext, cut: TrialCut, whole: Tried, without: Tried): CutEffect {
  const { traced } = context;
  const figs = whole.score.ripeFigs - without.score.ripeFigs;
  const own = ownOf(traced, whole, without);
  const lights = traced.full.canopy.shoots
    .map(({ id, name, owner }, i) => ({
      id,
      name,
      shareGain: whole.keep[owner] === 1 ? (whole.shootLights[i] ?? 0) - (without.shootLights[i] ?? 0) : 0,
    }))
    .filter(({ shareGain }) => shareGain >= leastShareGain)
    .sort((a, b) => b.shareGain - a.shareGain)
    .slice(0, mostShoots);
  const bothCrops = figs + whole.score.firstCropFigs - without.score.firstCropFigs;
  return {
    ifKept: { figs: -bothCrops, fallBelow: fallBelow(context, whole, without) },
    gain: {
      figs: bothCrops,
      fruitingWoodM: whole.score.fruitingWoodM - without.score.fruitingWoodM,
      lights: cut.kind === 'tip' ? [] : lights,
    },
    ...own,
    figsForOthers: figs + own.figsIfKept,
    figsByShade: figsByShade(traced, whole, without),
  };
}

/** Shoots that stand either way, at or above fruiting light in the plan and below it without the cut. */
function fallBelow({ traced, input }: TrialContext, whole: Tried, without: Tried): IfKept['fallBelow'] {
  const { canopy } = traced.full;
  const limit = input.values.fruitHalfAtFraction;
  const found = canopy.shoots.flatMap(({ id, name, owner }, i) => {
    const [share, shareIfKept] = [whole.shootLights[i] ?? 0, without.shootLights[i] ?? 0];
    if (whole.keep[owner] !== 1 || share < limit || shareIfKept >= limit) return [];
    const figsLost = figsOn(traced, whole, i) - figsOn(traced, without, i);
    return [{ id, name, share, shareIfKept, figsLost }];
  });
  return found.sort((a, b) => b.figsLost - a.figsLost);
}

/** Figs that ripen on a shoot, ends that a cut takes left out. */
function figsOn({ full: { canopy }, sites }: TracedSeason, { siteFigs, keep }: Tried, shoot: number): number {
  const indexOfOwner = new Map([[canopy.shoots[shoot]?.owner ?? -1, shoot]]);
  return sites.owner.reduce((sum, owner, i) => {
    const isOn = keep[owner] === 1 && shootOf(canopy, indexOfOwner, owner) === shoot;
    return isOn ? sum + (siteFigs[i] as number) : sum;
  }, 0);
}

/** Mean light and figs of the nodes that go with the cut, as they stand without it. */
function ownOf({ full, sites }: TracedSeason, whole: Tried, without: Tried) {
  const goes = (owner: number): boolean => whole.keep[owner] !== 1 && without.keep[owner] === 1;
  let [lightSum, count, figsIfKept] = [0, 0, 0];
  full.canopy.nodes.forEach(({ owner }, i) => {
    if (!goes(owner)) return;
    lightSum += without.nodeLight[i] as number;
    count++;
  });
  sites.owner.forEach((owner, i) => {
    if (goes(owner)) figsIfKept += without.siteFigs[i] as number;
  });
  return { ownShare: count === 0 ? 0 : lightSum / count, figsIfKept };
}

/** Figs that the others set more of without its shade, counted as they ripen on the tree without it. */
function figsByShade({ sites }: TracedSeason, whole: Tried, without: Tried): number {
  let figs = 0;
  sites.owner.forEach((owner, i) => {
    const set = whole.siteSet[i] as number;
    if (whole.keep[owner] !== 1 || set === 0) return;
    figs += (whole.siteFigs[i] as number) * (1 - (without.siteSet[i] as number) / set);
  });
  return figs;
}
