/** Branches that cross or rub. Which of the two stays is settled by a small count of points, all of them shown. */
import { type PlacedAxis, radiusAtM, withDescendants } from '../../geometry/tree.ts';
import { angleBetweenDeg, type Vec3 } from '../../geometry/vec.ts';
import type { Merit } from '../cut.ts';
import type { Finding } from '../finding.ts';
import { chordOf, isGreen, type RuleContext } from '../ruleContext.ts';
import { nearness } from './nearness.ts';

/** One finding per pair: the branch with fewer points goes, whole. Green shoots are left to the search for spacing and light. */
export function crossing(context: RuleContext): Finding[] {
  const { values } = context;
  const wood = [...context.placed.values()].filter(
    (axis) => axis.axis.kind !== 'trunk' && !isGreen(context, axis),
  );
  const gone = new Set<string>();
  const findings: Finding[] = [];
  for (const [i, first] of wood.entries()) {
    for (const second of wood.slice(i + 1)) {
      if (gone.has(first.axis.id) || gone.has(second.axis.id)) continue;
      const near = nearness(
        second,
        first,
        values.crossingGapCm / 100,
        values.crossingClearanceCm / 100,
        values.crossingLeftOutCm / 100,
      );
      if (near === null) continue;
      const { goes, stays, merits } = settle(context, first, second);
      for (const id of withDescendants(context.tree, goes.axis.id)) gone.add(id);
      const { barkGapM, barkLimitM, gapM, overM, limitM } = near;
      const reason = {
        rule: 'crossing',
        other: stays.axis.name,
        barkGapM,
        barkLimitM,
        gapM,
        overM,
        limitM,
        keptFor: merits,
      } as const;
      findings.push({ kind: 'remove', target: goes.axis.id, atM: 0, reason, isCut: true });
    }
  }
  return findings;
}

interface Settled {
  readonly goes: PlacedAxis;
  readonly stays: PlacedAxis;
  /** What the one that stays has over the other. */
  readonly merits: readonly Merit[];
}

/**
 * Points for each (rules of thumb; common practice): sound wood 4, scaffold or carries one 3, carries more wood 2,
 * heads outward 2, fork of 40-65 degrees 1, thicker 1. Wood that the other grew from always stays; so does what
 * is pinned to keep. On a tie the longer stays, then the earlier in the tree.
 */
function settle(context: RuleContext, first: PlacedAxis, second: PlacedAxis): Settled {
  const [a, b] = [pointsOf(context, first), pointsOf(context, second)];
  const lead = leadOf(context, first, second) || total(a) - total(b) || first.lengthM - second.lengthM;
  const [stays, goes, won, lost] = lead >= 0 ? [first, second, a, b] : [second, first, b, a];
  const merits: Merit[] = counted.filter((merit) => (won[merit] ?? 0) > (lost[merit] ?? 0));
  if (won.weightM > lost.weightM * 1.2) merits.push('carries more');
  if (won.thicknessM > lost.thicknessM * 1.1) merits.push('thicker');
  return { stays, goes, merits };
}

/** Merits that carry points of their own; size levels off and is told apart. */
const counted = ['sound', 'scaffold', 'heads outward', 'good fork'] as const;

interface Points extends Partial<Record<Merit, number>> {
  /** Wood that hangs on it, itself included, metres. */
  readonly weightM: number;
  readonly thicknessM: number;
}

function pointsOf(context: RuleContext, axis: PlacedAxis): Points {
  const ids = withDescendants(context.tree, axis.axis.id);
  const carried = ids.map((id) => context.placed.get(id)).filter((a) => a !== undefined);
  const tip = axis.path[axis.path.length - 1] as Vec3;
  const outwardM = context.fromTrunkLineM(tip) - context.fromTrunkLineM(axis.path[0] as Vec3);
  const forkDeg = forkAngleDeg(axis);
  return {
    sound: axis.axis.condition === 'live' ? 4 : 0,
    scaffold: carried.some((a) => a.axis.kind === 'scaffold') ? 3 : 0,
    'heads outward': outwardM > 0.3 * axis.lengthM ? 2 : outwardM > 0 ? 1 : 0,
    'good fork': forkDeg >= 40 && forkDeg <= 65 ? 1 : 0,
    weightM: carried.reduce((sum, a) => sum + a.lengthM, 0),
    thicknessM: radiusAtM(axis, 0) * 2,
  };
}

function total(points: Points): number {
  const { weightM, thicknessM, ...merits } = points;
  const sum = Object.values(merits).reduce((s, p) => s + p, 0);
  // Two points for carrying a metre, one for 2 cm of thickness; both level off so that size alone never decides.
  return sum + 2 * Math.min(1, weightM) + Math.min(1, thicknessM / 0.02);
}

/** Whichever of the two may not go: above 0 the first stays, below 0 the second. */
function leadOf(context: RuleContext, first: PlacedAxis, second: PlacedAxis): number {
  const grewFrom = (a: PlacedAxis, b: PlacedAxis): boolean =>
    withDescendants(context.tree, a.axis.id).includes(b.axis.id);
  if (grewFrom(first, second)) return 1;
  if (grewFrom(second, first)) return -1;
  const keeps = (a: PlacedAxis): number => (a.axis.pin === 'keep' ? 1 : a.axis.pin === 'remove' ? -1 : 0);
  return keeps(first) - keeps(second);
}

/** Angle between a branch and its parent at the fork, over the first 12 cm. */
function forkAngleDeg(axis: PlacedAxis): number {
  if (axis.parent === null) return 0;
  const { atM } = axis.axis;
  const along =
    atM < axis.parent.lengthM ? chordOf(axis.parent, atM, atM + 0.12) : chordOf(axis.parent, atM - 0.12, atM);
  return angleBetweenDeg(chordOf(axis, 0, 0.12), along);
}
