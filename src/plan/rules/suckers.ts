/** Suckers: shoots from below the soil or from the trunk below the lowest scaffold. */
import { type PlacedAxis, radiusAtM } from '../../geometry/tree.ts';
import type { Finding } from '../finding.ts';
import type { RuleContext } from '../ruleContext.ts';

/** Height at which the lowest scaffold leaves the trunk, metres above the soil; none: above everything. */
export function lowestScaffoldM(context: RuleContext): number {
  const scaffolds = context.childrenOf(context.trunk.axis.id).filter((axis) => axis.axis.kind === 'scaffold');
  return Math.min(...scaffolds.map((axis) => originHeightM(context, axis)), Number.POSITIVE_INFINITY);
}

const originHeightM = (context: RuleContext, axis: PlacedAxis): number =>
  (axis.path[0] as PlacedAxis['path'][number])[1] - context.soilM;

/**
 * Each sucker goes whole, at its origin; but the strongest, as many as the grower wants for layering or for renewal, stay
 * and are told. The strongest is the live one that is thickest at its base, the longest of equals.
 */
export function suckers(context: RuleContext): Finding[] {
  const found = allSuckers(context);
  const strongest = found
    .map(({ target }) => context.placed.get(target) as PlacedAxis)
    .filter(({ axis }) => axis.condition === 'live')
    .sort((a, b) => radiusAtM(b, 0) - radiusAtM(a, 0) || b.lengthM - a.lengthM)
    .slice(0, context.values.suckersKept);
  const kept = new Set(strongest.map(({ axis }) => axis.id));
  return found.map((finding) => ({ ...finding, isCut: !kept.has(finding.target) }));
}

function allSuckers(context: RuleContext): Omit<Finding, 'isCut'>[] {
  const limitM = context.values.suckerBelowCm / 100;
  const scaffoldM = lowestScaffoldM(context);
  const findings: Omit<Finding, 'isCut'>[] = [];
  for (const axis of context.placed.values()) {
    const { kind, id, parentId } = axis.axis;
    if (kind === 'trunk' || kind === 'scaffold') continue;
    const heightM = originHeightM(context, axis);
    const lowOnTrunk = parentId === context.trunk.axis.id && heightM < Math.min(limitM, scaffoldM);
    const isSucker = kind === 'sucker' && axis.parent?.axis.kind !== 'sucker';
    if (!isSucker && !lowOnTrunk) continue;
    const reason = { rule: 'sucker', originHeightM: Math.max(0, heightM), limitM } as const;
    findings.push({ kind: 'remove', target: id, atM: 0, reason });
  }
  return findings;
}
