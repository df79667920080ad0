/** Ways to renew an old tree: from a strong sucker at its base, or limb by limb over three years. What is lost, and when it is back. */
import { type PlacedAxis, radiusAtM, withDescendants } from '../geometry/tree.ts';
import type { IsoDate, Period } from '../season/site.ts';
import type { CutToMake } from './applyCuts.ts';
import type { Cut } from './cut.ts';
import { describeCut } from './describeCut.ts';
import type { PlanInput } from './input.ts';
import { isGreen, type RuleContext, ruleContext } from './ruleContext.ts';
import type { TracedSeason } from './tracedSeason.ts';
import { trialContext, tryThese } from './trial.ts';
import type { WorkYear } from './windows.ts';

export interface RenewalYear {
  /** 1 for the season after the first cuts. */
  readonly year: number;
  /** Made before that season; none in the years of waiting. */
  readonly cuts: readonly Pick<Cut, 'kind' | 'target' | 'atM' | 'place' | 'cautions'>[];
  /** Main crop: with what was cut bearing again in the third season after its cut, and already in the second. */
  readonly ripeFigs: { readonly low: number; readonly high: number };
}

export interface RenewalWay {
  readonly way: 'to a sucker' | 'a third a year';
  /** Name of the sucker that becomes the tree; null where limbs go in turn. */
  readonly sucker: string | null;
  /** First winter window for the cuts; those of later years fall on the same days. */
  readonly when: Period;
  readonly ripeFigsNow: number;
  /** Up to the season in which the crop is back at the latest. */
  readonly years: readonly RenewalYear[];
}

/** A base sucker at least so thick can carry a tree on, metres; our choice: a finger. */
const strongSuckerM = 0.015;
/** Limbs go in so many winters (common practice: a third of the old wood a year). */
const winters = 3;
/** Seasons until new wood bears again: one to two (common practice; Zare 2021 on old fig trees). */
const backAfter = { soonest: 1, latest: 2 };

interface Way {
  readonly way: RenewalWay['way'];
  readonly sucker: string | null;
  /** Axes that go, winter by winter. */
  readonly groups: readonly (readonly CutToMake[])[];
}

/** Both ways where the tree has what they need; what the grower pinned to keep never goes. `asItIs`: the tree left alone. */
export function renewalWays(input: PlanInput, asItIs: TracedSeason, year: WorkYear): RenewalWay[] {
  const context = ruleContext(input.tree, input.stance, input.values);
  return [...toSucker(context), ...limbByLimb(context)].map((way) => weigh(way, input, asItIs, year));
}

const isFree = (context: RuleContext, axis: PlacedAxis): boolean =>
  withDescendants(context.tree, axis.axis.id).every((id) => {
    const one = context.placed.get(id)?.axis;
    return one?.pin !== 'keep' && one?.buds.every(({ pin }) => pin !== 'keep') === true;
  });

/** The thickest live sucker stays, the trunk is cut just above where it leaves, and all above goes. */
function toSucker(context: RuleContext): Way[] {
  const { trunk } = context;
  const onTrunk = context.childrenOf(trunk.axis.id);
  const [sucker] = onTrunk
    .filter(({ axis }) => axis.kind === 'sucker' && axis.condition === 'live')
    .filter((axis) => radiusAtM(axis, 0) * 2 >= strongSuckerM)
    .sort((a, b) => radiusAtM(b, 0) - radiusAtM(a, 0));
  if (sucker === undefined) return [];
  const atM = Math.min(trunk.lengthM, sucker.axis.atM + 2 * radiusAtM(trunk, sucker.axis.atM));
  const above = onTrunk.filter(({ axis }) => axis.atM > atM);
  if (above.length === 0 || !above.every((axis) => isFree(context, axis))) return [];
  const cut: CutToMake = { kind: 'remove', target: trunk.axis.id, atM };
  return [{ way: 'to a sucker', sucker: sucker.axis.name, groups: [[cut]] }];
}

/** Sick limbs first, then the oldest, then the thickest; a third of them each winter, the last ones fewest. */
function limbByLimb(context: RuleContext): Way[] {
  const limbs = context
    .childrenOf(context.trunk.axis.id)
    .filter((axis) => axis.axis.kind !== 'sucker' && !isGreen(context, axis) && isFree(context, axis));
  if (limbs.length < winters) return [];
  const isSound = ({ axis }: PlacedAxis): number => (axis.condition === 'live' ? 1 : 0);
  const inTurn = [...limbs].sort(
    (a, b) => isSound(a) - isSound(b) || a.axis.grownIn - b.axis.grownIn || radiusAtM(b, 0) - radiusAtM(a, 0),
  );
  const groups = Array.from({ length: winters }, (_, winter) => {
    const upTo = (n: number): number => Math.ceil((n * inTurn.length) / winters);
    return inTurn
      .slice(upTo(winter), upTo(winter + 1))
      .map(({ axis }): CutToMake => ({ kind: 'remove', target: axis.id, atM: 0 }));
  });
  return [{ way: 'a third a year', sucker: null, groups }];
}

/**
 * Figs of what stands after each winter, from the rays of the tree left alone; what each winter took comes back whole one to two
 * seasons later. Dropped: stronger growth of what stays, and how the new wood shades it.
 */
function weigh(
  { way, sucker, groups }: Way,
  input: PlanInput,
  asItIs: TracedSeason,
  year: WorkYear,
): RenewalWay {
  const all = groups.flat();
  const evaluated = all.map((cut) => ({ ...cut, id: cut.target }));
  const trial = trialContext(asItIs, evaluated, input, Number(year.season.budBreakOn.slice(0, 4)));
  const left = [[], ...groups.map((_, i) => groups.slice(0, i + 1).flat())].map(
    (cuts) => tryThese(trial, cuts).score.ripeFigs,
  );
  const now = left[0] as number;
  const count = groups.length + backAfter.latest;
  const years = Array.from({ length: count }, (_, i): RenewalYear => {
    const stand = left[Math.min(i + 1, groups.length)] as number;
    const back = (after: number): number =>
      groups.reduce((sum, _group, winter) => {
        const lost = Math.max(0, (left[winter] as number) - (left[winter + 1] as number));
        return sum + (i - winter >= after ? lost : 0);
      }, 0);
    const ripeFigs = { low: stand + back(backAfter.latest), high: stand + back(backAfter.soonest) };
    return { year: i + 1, cuts: (groups[i] ?? []).map((cut) => placed(cut, input, year)), ripeFigs };
  });
  return { way, sucker, when: structureFrom(year, input.date), ripeFigsNow: now, years };
}

const structureFrom = ({ structure }: WorkYear, date: IsoDate): Period =>
  structure.from < date ? { from: date, to: structure.to } : structure;

function placed(cut: CutToMake, input: PlanInput, year: WorkYear): RenewalYear['cuts'][number] {
  const gain = { figs: 0, fruitingWoodM: 0, lights: [] };
  const { kind, target, atM, place, cautions } = describeCut(
    { ...cut, id: cut.target, reasons: [], gain, ifKept: { figs: 0, fallBelow: [] }, standsIn: null },
    input,
    year,
  );
  return { kind, target, atM, place, cautions };
}
