/** Branches that head into the middle of the crown. */

import type { Vec3 } from '../../geometry/vec.ts';
import { elevationDeg } from '../../geometry/world.ts';
import type { Finding } from '../finding.ts';
import { chordOf, isGreen, type RuleContext } from '../ruleContext.ts';

/** The share of its length for one as steep and long as a water sprout; our choice. */
const sproutHeadsInFraction = 0.1;

/**
 * A branch whose tip ends in the inner part of the crown radius, nearer to the trunk's line than its base.
 * Green shoots are left to the search, which knows their light, unless they stand as steep and long as a water sprout.
 */
export function inward(context: RuleContext): Finding[] {
  const { values, crownRadiusM } = context;
  const findings: Finding[] = [];
  if (crownRadiusM === 0) return findings;
  const shortestM = values.inwardShortestCm / 100;
  for (const axis of context.placed.values()) {
    const { kind, id } = axis.axis;
    if (kind === 'trunk' || kind === 'scaffold' || kind === 'sucker' || axis.lengthM < shortestM) continue;
    const steep = elevationDeg(chordOf(axis, 0, axis.lengthM)) >= values.waterSproutElevationDeg;
    const sproutLike = steep && axis.lengthM >= values.waterSproutLengthCm / 100;
    if (isGreen(context, axis) && !sproutLike) continue;
    const baseM = context.fromTrunkLineM(axis.path[0] as Vec3);
    const tipM = context.fromTrunkLineM(axis.path[axis.path.length - 1] as Vec3);
    const share = tipM / crownRadiusM;
    const wanted = sproutLike ? sproutHeadsInFraction : values.inwardHeadsInFraction;
    const headsIn = baseM - tipM >= wanted * axis.lengthM;
    if (!headsIn || share >= values.inwardInnerFraction) continue;
    const reason = { rule: 'inward', share, limit: values.inwardInnerFraction } as const;
    findings.push({ kind: 'remove', target: id, atM: 0, reason, isCut: true });
  }
  return findings;
}
