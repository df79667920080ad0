/** Water sprouts: steep, long growth from older wood. */

import type { PlacedAxis } from '../../geometry/tree.ts';
import { elevationDeg } from '../../geometry/world.ts';
import type { Finding } from '../finding.ts';
import { chordOf, type RuleContext } from '../ruleContext.ts';

export function waterSprouts(context: RuleContext): Finding[] {
  const { values } = context;
  const findings: Finding[] = [];
  for (const axis of context.placed.values()) {
    const { kind, id, grownIn } = axis.axis;
    if (axis.parent === null || kind === 'scaffold' || kind === 'sucker') continue;
    const parentAgeYears = grownIn - axis.parent.axis.grownIn;
    if (parentAgeYears < values.waterSproutOnWoodYears || isLeader(axis)) continue;
    const elevation = elevationDeg(chordOf(axis, 0, axis.lengthM));
    const [limitDeg, limitM] = [values.waterSproutElevationDeg, values.waterSproutLengthCm / 100];
    if (elevation <= limitDeg || axis.lengthM <= limitM) continue;
    const internodeM = meanInternodeM(axis);
    if (internodeM !== null && internodeM <= values.waterSproutInternodeCm / 100) continue;
    const { lengthM } = axis;
    const reason = {
      rule: 'water sprout',
      elevationDeg: elevation,
      limitDeg,
      lengthM,
      limitM,
      internodeM,
      parentAgeYears,
    } as const;
    findings.push({ kind: 'remove', target: id, atM: 0, reason, isCut: true });
  }
  return findings;
}

/** Whether it goes on from the very tip of its parent. */
const isLeader = (axis: PlacedAxis): boolean =>
  axis.parent !== null && axis.axis.atM >= axis.parent.lengthM - 0.02;

/** Length over nodes, metres; null when neither leaves nor buds were counted. */
function meanInternodeM(axis: PlacedAxis): number | null {
  const nodes = axis.axis.foliage?.count ?? axis.axis.buds.length;
  return nodes > 0 ? axis.lengthM / nodes : null;
}
