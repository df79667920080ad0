/** Winter tip cuts: at most a few centimetres, only where one is needed, and never without its cost. */
import { pointAt } from '../geometry/path.ts';
import type { PlacedAxis } from '../geometry/tree.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { Reason } from './cut.ts';
import type { Fault } from './faults.ts';
import { firstCropFigsBeyond, lastYearsWood, nodesFromTipM } from './firstCrop.ts';
import type { Remark } from './remarks.ts';
import type { RuleContext } from './ruleContext.ts';

/** A tip cut leaves this much wood above a bud, metres (common practice: a finger's breadth in soft fig wood). */
const aboveBudM = 0.01;
/** Less than this is not worth the knife, metres; our choice. */
const shortestM = 0.01;

type TipReason = Extract<Reason, { rule: 'tip' }>;

export interface Tips {
  readonly cuts: readonly Fault[];
  readonly remarks: readonly Remark[];
}

/** Of a tree sketched without leaves. Only on last year's wood, and nothing that the grower pinned to keep. When no tip needs cutting, that is said. */
export function proposeTips(context: RuleContext, seasonYear: number, bearsFirstCrop: boolean): Tips {
  const cuts: Fault[] = [];
  const remarks: Remark[] = [];
  for (const { id } of lastYearsWood(context.tree, seasonYear)) {
    const axis = context.placed.get(id) as PlacedAxis;
    if (axis.axis.pin === 'keep') continue;
    const wish = wishFor(context, axis);
    if (wish === null) continue;
    if (wish.atM === null) {
      if (wish.why !== 'wants a lateral')
        remarks.push({ about: wish.why, branch: axis.axis.name, byM: wish.byM });
      continue;
    }
    if (axis.axis.buds.some((bud) => bud.pin === 'keep' && bud.atM > (wish.atM ?? 0))) continue;
    cuts.push({
      kind: 'tip',
      target: id,
      atM: wish.atM,
      reasons: [tipReason(context, axis, wish.atM, wish.why, bearsFirstCrop)],
    });
  }
  return { cuts, remarks: cuts.length === 0 ? [...remarks, { about: 'no tip' }] : remarks };
}

interface Wish {
  readonly why: TipReason['why'];
  /** Where the cut would be, metres along the axis; null when a tip cut is not enough. */
  readonly atM: number | null;
  /** How far the tip stands out of the size kept, metres. */
  readonly byM: number;
}

function wishFor(context: RuleContext, axis: PlacedAxis): Wish | null {
  const { values } = context;
  const tip = axis.path[axis.path.length - 1] as Vec3;
  const tooHighM = (point: Vec3): number => point[1] - context.soilM - values.keptHeightM;
  const tooWideM = (point: Vec3): number => context.fromTrunkLineM(point) - values.keptSpreadM / 2;
  if (tooHighM(tip) > 0) return { why: 'too high', atM: within(context, axis, tooHighM), byM: tooHighM(tip) };
  if (tooWideM(tip) > 0) return { why: 'too wide', atM: within(context, axis, tooWideM), byM: tooWideM(tip) };
  const isBare = context.childrenOf(axis.axis.id).length === 0;
  if (!isBare || axis.lengthM < values.branchWantedOnBareCm / 100) return null;
  return { why: 'wants a lateral', atM: belowTopBud(context, axis), byM: 0 };
}

const lowestCutM = (context: RuleContext, axis: PlacedAxis): number =>
  Math.max(0, axis.lengthM - context.values.tipCutAtMostCm / 100);

/** The cut, within the length allowed, that brings the wood back within the size kept, above a bud if there is one to spare. */
function within(context: RuleContext, axis: PlacedAxis, overM: (point: Vec3) => number): number | null {
  const lowestM = lowestCutM(context, axis);
  for (let atM = axis.lengthM - shortestM; atM >= lowestM; atM -= 0.005) {
    if (overM(pointAt(axis.path, atM)) > 0) continue;
    const bud = axis.axis.buds.filter((b) => b.atM + aboveBudM <= atM).pop();
    const aboveBud = bud === undefined ? 0 : bud.atM + aboveBudM;
    return aboveBud >= lowestM ? aboveBud : atM;
  }
  return null;
}

/** Just above the highest bud that leaves the tip bud behind it gone. */
function belowTopBud(context: RuleContext, axis: PlacedAxis): number | null {
  const below = axis.axis.buds.filter((bud) => bud.atM + aboveBudM <= axis.lengthM - shortestM);
  const atM = (below.pop()?.atM ?? 0) + aboveBudM;
  return atM > aboveBudM && atM >= lowestCutM(context, axis) ? atM : null;
}

function tipReason(
  { tree, values }: RuleContext,
  { axis, lengthM }: PlacedAxis,
  atM: number,
  why: TipReason['why'],
  bearsFirstCrop: boolean,
): TipReason {
  const nodes = nodesFromTipM(tree, axis).filter((node) => node > atM).length;
  const firstCropFigsLost = bearsFirstCrop ? firstCropFigsBeyond(tree, axis, atM, values) : 0;
  return { rule: 'tip', lengthM: lengthM - atM, nodes, firstCropFigsLost, why };
}
