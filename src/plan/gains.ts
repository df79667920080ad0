/** What each cut brings: the plan against the plan without that one cut, on the same rays. */
import type { FigValues } from '../species/fig.ts';
import type { Gain } from './cut.ts';
import { lightCurve } from './lightResponse.ts';
import type { TracedCanopy } from './tracedCanopy.ts';
import { type TrialContext, type TrialCut, type Tried, tryThese } from './trial.ts';

/** Changes of light smaller than this are not listed, share of open sky; our choice. */
const leastShareGain = 0.002;
/** Shoots listed, at most. */
const mostShoots = 3;

export interface CutEffect {
  readonly gain: Gain;
  /** Light and figs of what goes, were it kept, and the figs that its shade would cost the others. */
  readonly ownShare: number;
  readonly figsIfKept: number;
  readonly figsForOthers: number;
}

/** Effects in the order of the cuts. */
export function* cutEffects(context: TrialContext): Generator<CutEffect, void, void> {
  const whole = tryThese(context, context.cuts);
  for (const cut of context.cuts) {
    const without = tryThese(
      context,
      context.cuts.filter((other) => other !== cut),
    );
    yield effectOf(context, cut, whole, without);
  }
}

function effectOf({ traced, input }: TrialContext, cut: TrialCut, whole: Tried, without: Tried): CutEffect {
  const figs = whole.score.ripeFigs - without.score.ripeFigs;
  const own = ownOf(traced, whole, without, input.values);
  const lights = traced.canopy.shoots
    .map(({ id, name, owner }, i) => ({
      id,
      name,
      shareGain: whole.keep[owner] === 1 ? (whole.shootLights[i] ?? 0) - (without.shootLights[i] ?? 0) : 0,
    }))
    .filter(({ shareGain }) => shareGain >= leastShareGain)
    .sort((a, b) => b.shareGain - a.shareGain)
    .slice(0, mostShoots);
  return {
    gain: {
      figs: figs + whole.score.firstCropFigs - without.score.firstCropFigs,
      fruitingWoodM: whole.score.fruitingWoodM - without.score.fruitingWoodM,
      lights: cut.kind === 'tip' ? [] : lights,
    },
    ...own,
    figsForOthers: figs + own.figsIfKept,
  };
}

/** Mean light and figs of the nodes that go with the cut, as they stand without it. */
function ownOf({ canopy, worth }: TracedCanopy, whole: Tried, without: Tried, values: FigValues) {
  const response = lightCurve(values);
  let [lightSum, count, figsIfKept] = [0, 0, 0];
  canopy.nodes.forEach(({ owner }, i) => {
    if (whole.keep[owner] === 1 || without.keep[owner] !== 1) return;
    const light = without.nodeLight[i] as number;
    lightSum += light;
    count++;
    figsIfKept += (worth.figs[i] as number) * response(light);
  });
  return { ownShare: count === 0 ? 0 : lightSum / count, figsIfKept };
}
