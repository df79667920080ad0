/** Forks so narrow that bark is likely to be turned in and the wood to tear. */
import { type PlacedAxis, radiusAtM } from '../../geometry/tree.ts';
import { angleBetweenDeg, type Vec3 } from '../../geometry/vec.ts';
import type { Finding } from '../finding.ts';
import { chordOf, isGreen, type RuleContext } from '../ruleContext.ts';

/** A branch within this of its parent's tip may be the parent's own continuation, metres; our choice. */
const atTipM = 0.03;

/**
 * On young wood the weaker of the two goes: the branch, or what goes on of its parent when that is thinner.
 * Thick wood and forks about as wide as the limit are told, not cut. Green shoots are left out: they still bend.
 */
export function narrowForks(context: RuleContext): Finding[] {
  const findings: Finding[] = [];
  for (const axis of context.placed.values()) {
    const fork = forkOf(context, axis);
    if (fork === null || fork.angleDeg >= context.values.narrowForkDeg) continue;
    const { values } = context;
    const reason = { rule: 'narrow fork', angleDeg: fork.angleDeg, limitDeg: values.narrowForkDeg } as const;
    const thicknessM =
      fork.goes.atM === 0 ? fork.goes.axis.axis.baseDiameterM : 2 * radiusAtM(fork.goes.axis, fork.goes.atM);
    const isThin = thicknessM <= values.narrowForkRemarkOverCm / 100;
    const isSure = fork.angleDeg < values.narrowForkDeg - values.narrowForkDoubtDeg;
    const isCut = isThin && isSure && fork.goes.axis.parent !== null;
    findings.push({ kind: 'remove', target: fork.goes.axis.axis.id, atM: fork.goes.atM, reason, isCut });
  }
  return findings;
}

interface Fork {
  readonly angleDeg: number;
  /** The weaker of the two, and where it would be cut. */
  readonly goes: { readonly axis: PlacedAxis; readonly atM: number };
}

/** So much of both branches is measured, metres. */
const overM = ({ values }: RuleContext): number => values.narrowForkMeasuredCm / 100;

/** The fork at the base of a branch; null where it has none to speak of. */
function forkOf(context: RuleContext, axis: PlacedAxis): Fork | null {
  const { parent } = axis;
  if (parent === null || axis.axis.kind === 'sucker' || isGreen(context, axis)) return null;
  const measuredOverM = overM(context);
  const own = chordOf(axis, 0, measuredOverM);
  const { atM } = axis.axis;
  if (atM < parent.lengthM - atTipM) {
    const angleDeg = angleBetweenDeg(own, chordOf(parent, atM, atM + measuredOverM));
    const parentThinner = 2 * radiusAtM(parent, atM) < axis.axis.baseDiameterM;
    return {
      angleDeg,
      goes: parentThinner ? { axis: parent, atM: atM + axis.axis.baseDiameterM } : { axis, atM: 0 },
    };
  }
  const onward = continuationOf(context, parent);
  if (onward === axis) return null;
  const angleDeg = angleBetweenDeg(own, chordOf(onward, 0, measuredOverM));
  const weaker = onward.axis.baseDiameterM < axis.axis.baseDiameterM ? onward : axis;
  return { angleDeg, goes: { axis: weaker, atM: 0 } };
}

/** Of the branches at a parent's tip, the one that goes on most nearly straight. */
function continuationOf(context: RuleContext, parent: PlacedAxis): PlacedAxis {
  const measuredOverM = overM(context);
  const ahead: Vec3 = chordOf(parent, Math.max(0, parent.lengthM - measuredOverM), parent.lengthM);
  const atTip = context
    .childrenOf(parent.axis.id)
    .filter(
      (child) =>
        child.axis.kind !== 'sucker' && !isGreen(context, child) && child.axis.atM >= parent.lengthM - atTipM,
    );
  const bend = (child: PlacedAxis): number => angleBetweenDeg(chordOf(child, 0, measuredOverM), ahead);
  return atTip.reduce((best, child) => (bend(child) < bend(best) ? child : best));
}
