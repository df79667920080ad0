/** Water sprouts: steep, long growth from older wood. */

import type { PlacedAxis } from '../../geometry/tree.ts';
import { elevationDeg } from '../../geometry/world.ts';
import type { Finding } from '../finding.ts';
import { chordOf, type RuleContext } from '../ruleContext.ts';

/** Wood counts as old from two years before the sprout (common practice). */
const parentOlderByYears = 2;
/** A sprout with nodes closer than this is ordinary growth: internodes over 7-8 cm are called over-vigorous (common practice). */
const internodeOverM = 0.07;

export function waterSprouts(context: RuleContext): Finding[] {
  const { values } = context;
  const findings: Finding[] = [];
  for (const axis of context.placed.values()) {
    const { kind, id, grownIn } = axis.axis;
    if (axis.parent === null || kind === 'scaffold' || kind === 'sucker') continue;
    if (axis.parent.axis.grownIn > grownIn - parentOlderByYears || isLeader(axis)) continue;
    const elevation = elevationDeg(chordOf(axis, 0, axis.lengthM));
    if (elevation <= values.waterSproutElevationDeg || axis.lengthM <= values.waterSproutLengthCm / 100)
      continue;
    const internodeM = meanInternodeM(axis);
    if (internodeM !== null && internodeM <= internodeOverM) continue;
    const reason = { rule: 'water sprout', elevationDeg: elevation, lengthM: axis.lengthM } as const;
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
