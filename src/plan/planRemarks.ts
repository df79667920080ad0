/** What a plan has to say beside its cuts. */
import type { Tree } from '../geometry/tree.ts';
import { yearOf } from '../season/calendar.ts';
import { applyCuts, type CutToMake } from './applyCuts.ts';
import type { Reason } from './cut.ts';
import type { Faults } from './faults.ts';
import { figsLostBy } from './fewerFigs.ts';
import type { Finding } from './finding.ts';
import type { PlanInput } from './input.ts';
import { brokenText, type LimitsBroken } from './limitsBroken.ts';
import type { Remark } from './remarks.ts';
import { type RuleContext, standsInLeaf } from './ruleContext.ts';
import type { Score } from './score.ts';
import type { WorkStep } from './steps.ts';
import type { TracedSeason } from './tracedSeason.ts';
import type { WorkYear } from './windows.ts';
import { amountRemarks, onSuckers } from './yearlyLimit.ts';

export interface RemarkFacts {
  readonly input: PlanInput;
  readonly year: WorkYear;
  readonly faults: Faults;
  /** Of the tree as it is. */
  readonly context: RuleContext;
  readonly tipRemarks: readonly Remark[];
  /** All cuts but those of buds. */
  readonly woodCuts: readonly (CutToMake & { readonly reasons: readonly Reason[] })[];
  /** With those that are the grower's call. */
  readonly proposedWoodCuts: readonly CutToMake[];
  readonly cutCount: number;
  readonly thinningCount: number;
  /** Limbs with nothing near their base to renew them from. */
  readonly bareBases: readonly string[];
  readonly doNothing: Score;
  readonly plan: Score;
  readonly steps: readonly WorkStep[];
  /** Null where nothing was sought. */
  readonly broken: LimitsBroken | null;
  /** Figs that the roots can feed; infinite in open ground. */
  readonly figsHeld: number;
  /** Of the leaves that stand today, the share that the cuts take; 0 on a tree not in leaf. */
  readonly leafShareRemoved: number;
}

/** Figs that the plan may lose before it is said; below it is within the doubt of any plan. Our choice. */
const figsWorthTelling = 0.5;
/** Load of figs set over figs held beyond which the tree is said to carry too many; our choice. */
const overloadWorthTelling = 1.5;
/** Fewer ripe figs a shoot than this, in a tree left alone or thinned, is put down to the season. Our choice. */
const figsAShootInShortSeason = 0.1;

export function planRemarks(facts: RemarkFacts): Remark[] {
  return [
    ...facts.faults.remarks.map((finding) => ofFinding(finding, facts.context)),
    ...facts.faults.overruled.map(
      (finding): Remark => ({
        about: 'overruled',
        branch: nameOf(finding, facts.context),
        reason: finding.reason,
      }),
    ),
    ...facts.faults.postponed.flatMap(({ kind, target, reasons }): Remark[] => {
      const [reason] = reasons;
      if (reason === undefined) return [];
      const branch = nameOf({ kind, target }, facts.context);
      return [{ about: 'next year', branch, reason, limit: facts.input.values.removedShareStopFraction }];
    }),
    ...amountRemarks(facts.context, facts.woodCuts),
    ...facts.tipRemarks,
    ...ofFigs(facts),
    ...ofSketch(facts),
    ...ofSeason(facts),
    ...ofAmount(facts),
  ];
}

function ofFinding(finding: Finding, context: RuleContext): Remark {
  const { reason } = finding;
  if (reason.rule === 'pinned') return { about: 'marked trunk' };
  if (reason.rule === 'dead' || reason.rule === 'diseased' || reason.rule === 'damaged') {
    return { about: 'sick trunk', condition: reason.rule };
  }
  if (reason.rule === 'sucker') return { about: 'sucker kept', branch: nameOf(finding, context) };
  const thickness = context.placed.get(finding.target)?.axis.baseDiameterM ?? 0;
  const isThick = thickness > context.values.narrowForkRemarkOverCm / 100;
  return { about: isThick ? 'thick fork' : 'doubtful fork', branch: nameOf(finding, context), reason };
}

function nameOf({ kind, target }: Pick<Finding, 'kind' | 'target'>, context: RuleContext): string {
  const axis = context.placed.get(target);
  if (axis !== undefined && kind !== 'rub off bud') return axis.axis.name;
  const on = [...context.placed.values()].find(({ axis: a }) => a.buds.some((bud) => bud.id === target));
  return on === undefined ? 'A bud' : `A bud on ${on.axis.name}`;
}

/** Branches that carried figs and go: what the grower saw is not thrown away unsaid. */
function ofFigs({ input: { tree }, proposedWoodCuts }: RemarkFacts): Remark[] {
  const bearing = tree.axes.filter((axis) => axis.bearsFigs === true);
  if (bearing.length === 0) return [];
  const left = new Set(applyCuts(tree, proposedWoodCuts).axes.map(({ id }) => id));
  const branches = bearing.filter(({ id }) => !left.has(id)).map(({ name }) => name);
  return branches.length === 0 ? [] : [{ about: 'carried figs', branches }];
}

/** What the sketch cannot tell on this day. */
function ofSketch({ input, year, bareBases: limbs }: RemarkFacts): Remark[] {
  const { axes } = input.tree;
  const remarks: Remark[] = [];
  const { turnedDeg } = input.stance;
  if (turnedDeg !== 0) remarks.push({ about: 'turned', turnedDeg });
  if (limbs.length > 0) remarks.push({ about: 'no renewal', limbs });
  const isInLeaf = standsInLeaf(input.tree);
  if (isInLeaf && year.stage !== 'in leaf') remarks.push({ about: 'sketched in leaf' });
  const lastGrownIn = Math.max(...axes.map((axis) => axis.grownIn));
  const isOld = lastGrownIn < yearOf(year.season.budBreakOn) - 1;
  if (isOld && !isInLeaf) remarks.push({ about: 'sketch is old', lastGrownIn });
  return remarks;
}

function ofSeason({ input, year, plan, thinningCount }: RemarkFacts): Remark[] {
  const remarks: Remark[] = [];
  const hasBuds = input.tree.axes.some((axis) => axis.foliage === null && axis.buds.length > 0);
  if (year.stage === 'rest' && hasBuds)
    remarks.push({ about: 'resting', budBreakOn: year.season.budBreakOn });
  if (year.stage === 'in leaf' && hasBuds && thinningCount > 0) {
    remarks.push({ about: 'late for buds', endedOn: year.rubOff.to });
  }
  if (year.stage === 'in leaf' && thinningCount > 0 && input.date > year.thinning.to) {
    remarks.push({ about: 'late to thin', endedOn: year.thinning.to });
  }
  const isShort =
    year.season.firstRipeOn === null && plan.ripeFigs < figsAShootInShortSeason * plan.shootCount;
  if (isShort) remarks.push({ about: 'short season', ripeFigs: plan.ripeFigs });
  return remarks;
}

function ofAmount(facts: RemarkFacts): Remark[] {
  const { input, plan, doNothing, cutCount, leafShareRemoved, figsHeld } = facts;
  const { removedShareWarnFraction: warn, removedShareStopFraction: stop } = input.values;
  const remarks: Remark[] = [];
  const isTrunkSick = facts.context.trunk.axis.condition !== 'live';
  if (cutCount === 0 && !isTrunkSick) remarks.push({ about: 'nothing to do' });
  if (leafShareRemoved > warn) remarks.push({ about: 'share removed', share: leafShareRemoved, limit: warn });
  if (leafShareRemoved > stop + 0.005) remarks.push(beyondTheLimit(facts));
  else if (leafShareRemoved > stop - 0.02) remarks.push({ about: 'over several years', limit: stop });
  if (plan.figsSet > overloadWorthTelling * figsHeld)
    remarks.push({ about: 'overload', set: plan.figsSet, held: figsHeld });
  const fewer = doNothing.ripeFigs + doNothing.firstCropFigs - plan.ripeFigs - plan.firstCropFigs;
  if (fewer > figsWorthTelling)
    remarks.push({ about: 'fewer figs', figs: fewer, why: figsLostBy(facts.steps) });
  const broken = facts.broken && brokenText(facts.broken);
  if (broken !== null) remarks.push({ about: 'limits broken', text: broken });
  return remarks;
}

function beyondTheLimit({ input, woodCuts }: RemarkFacts): Remark {
  const has = (...rules: Reason['rule'][]): boolean =>
    woodCuts.some(({ reasons }) => reasons.some(({ rule }) => rules.includes(rule)));
  return {
    about: 'beyond the limit',
    limit: input.values.removedShareStopFraction,
    hasSick: has('dead', 'diseased', 'damaged'),
    hasMarked: has('pinned'),
  };
}

/** Share of the leaves standing today that are on shoots which go, those of suckers left out. */
export function leafShareRemoved(
  { full: { canopy } }: TracedSeason,
  keep: ArrayLike<number>,
  tree: Tree,
): number {
  const suckers = onSuckers(tree);
  const today = canopy.shoots.filter(
    ({ owner, id }) => canopy.owners[owner]?.kind === 'axis' && !suckers.has(id),
  );
  const area = today.reduce((sum, shoot) => sum + shoot.leafAreaM2, 0);
  const gone = today
    .filter((shoot) => keep[shoot.owner] !== 1)
    .reduce((sum, shoot) => sum + shoot.leafAreaM2, 0);
  return area === 0 ? 0 : gone / area;
}
