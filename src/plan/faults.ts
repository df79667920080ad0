/** The rules in their order of work, each on the tree that the ones before it leave. */
import type { Stance, Tree } from '../geometry/tree.ts';
import type { FigValues } from '../species/fig.ts';
import { applyCuts } from './applyCuts.ts';
import type { Finding } from './finding.ts';
import { idsBeyond } from './idsBeyond.ts';
import { type RuleContext, ruleContext } from './ruleContext.ts';
import { crossing } from './rules/crossing.ts';
import { inward } from './rules/inward.ts';
import { marked } from './rules/marked.ts';
import { narrowForks } from './rules/narrowForks.ts';
import { sickWood } from './rules/sickWood.ts';
import { suckers } from './rules/suckers.ts';
import { waterSprouts } from './rules/waterSprouts.ts';
import { bearingShare } from './yearlyLimit.ts';

/** Looks at the tree and says what is wrong with it. */
export type Rule = (context: RuleContext) => Finding[];

/** Sick wood, suckers, crossing, inward and sprouts, narrow forks (common practice); first what the grower marked. */
const rulesInOrder: readonly { readonly rules: readonly Rule[]; readonly canWait: boolean }[] = [
  { rules: [marked], canWait: false },
  { rules: [sickWood], canWait: false },
  { rules: [suckers], canWait: false },
  { rules: [crossing], canWait: true },
  { rules: [inward, waterSprouts], canWait: true },
  { rules: [narrowForks], canWait: true },
];

export interface Fault {
  readonly kind: Finding['kind'];
  readonly target: string;
  readonly atM: number;
  readonly reasons: readonly Finding['reason'][];
}

export interface Faults {
  /** One entry per axis, in the order of work; none inside wood that another one takes. */
  readonly cuts: readonly Fault[];
  /** What is told without a cut. */
  readonly remarks: readonly Finding[];
  /** Findings dropped because the grower marked something there to be kept. */
  readonly overruled: readonly Finding[];
  /** Sound wood that would go, were the share a year may take not reached: next year's work. */
  readonly postponed: readonly Fault[];
  /** The tree with these cuts made. */
  readonly after: Tree;
}

export function findFaults(tree: Tree, stance: Stance, values: FigValues): Faults {
  const cuts: Fault[] = [];
  const remarks: Finding[] = [];
  const overruled: Finding[] = [];
  const postponed: Fault[] = [];
  let after = tree;
  for (const { rules, canWait } of rulesInOrder) {
    const context = ruleContext(after, stance, values);
    const found = rules.flatMap((rule) => rule(context));
    remarks.push(...found.filter((finding) => !finding.isCut));
    const wanted = found.filter((finding) => finding.isCut);
    overruled.push(...wanted.filter((finding) => takesPinned(after, finding)));
    const faults = joined(wanted.filter((finding) => !takesPinned(after, finding)));
    const outer = faults.filter((fault) => !faults.some((other) => takes(after, other, fault)));
    const now: Fault[] = [];
    for (const fault of outer) {
      const share = canWait ? bearingShare(tree, [...cuts, ...now, fault]) : 0;
      (share > values.removedShareStopFraction ? postponed : now).push(fault);
    }
    cuts.push(...now);
    after = applyCuts(after, now);
  }
  return { cuts, remarks, overruled, postponed, after };
}

/** One fault per axis: all reasons, the cut nearest to its base. */
function joined(findings: readonly Finding[]): Fault[] {
  const byTarget = new Map<string, Fault>();
  for (const { kind, target, atM, reason } of findings) {
    const known = byTarget.get(target);
    byTarget.set(target, {
      kind,
      target,
      atM: Math.min(atM, known?.atM ?? Number.POSITIVE_INFINITY),
      reasons: [...(known?.reasons ?? []), reason],
    });
  }
  return [...byTarget.values()];
}

/** Whether one cut takes the wood of another. */
function takes(tree: Tree, taker: Fault, other: Fault): boolean {
  if (taker.target === other.target) return false;
  const axis = tree.axes.find((a) => a.id === other.target);
  return axis !== undefined && idsBeyond(tree, taker).has(axis.id);
}

/** The grower's word: nothing goes that carries wood or a bud marked to be kept. */
export function takesPinned(tree: Tree, cut: Pick<Finding, 'kind' | 'target' | 'atM'>): boolean {
  if (cut.kind === 'rub off bud') {
    return tree.axes.some((axis) => axis.buds.some((bud) => bud.id === cut.target && bud.pin === 'keep'));
  }
  const ids = idsBeyond(tree, cut);
  return tree.axes.some((axis) => {
    if (!ids.has(axis.id)) return false;
    const fromM = axis.id === cut.target ? cut.atM : 0;
    const ownPin = axis.pin === 'keep' && !(axis.id === cut.target && cut.kind === 'tip');
    return ownPin || axis.buds.some((bud) => bud.pin === 'keep' && bud.atM >= fromM);
  });
}
