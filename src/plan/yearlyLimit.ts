/** How much a year may take: of the wood that bears leaves, by the form of the tree, and of the trunk's section in wounds. */
import { radiusAtM, type Tree, withDescendants } from '../geometry/tree.ts';
import type { FigValues } from '../species/fig.ts';
import type { Finding } from './finding.ts';
import { idsBeyond } from './idsBeyond.ts';
import type { Remark } from './remarks.ts';
import { isGreen, type RuleContext, standsInLeaf } from './ruleContext.ts';

type WoodCut = Pick<Finding, 'kind' | 'target' | 'atM'>;

/** Forms that are cut to stubs or spurs each winter lose most of their wood by design: no limit holds for them. */
export function limitsOfForm(values: FigValues): FigValues {
  if (values.cutToStubsEachWinter < 0.5) return values;
  return {
    ...values,
    removedShareWarnFraction: 1,
    removedShareStopFraction: 1,
    cutAreaWarnFraction: Infinity,
  };
}

/** Ids of suckers and of all that grew from them: none of it is wood that the tree is kept for. */
export function onSuckers(tree: Tree): ReadonlySet<string> {
  const suckers = tree.axes.filter(({ kind }) => kind === 'sucker');
  return new Set(suckers.flatMap(({ id }) => [...withDescendants(tree, id)]));
}

/**
 * Share of the leaf-bearing wood that cuts of wood take, 0 to 1: of the leaf area where the tree stands in leaf, in rest of the buds
 * that wait on it. Suckers and dead wood are no part of it.
 */
export function bearingShare(tree: Tree, cuts: readonly WoodCut[]): number {
  const inLeaf = standsInLeaf(tree);
  const takenFromM = new Map<string, number>();
  for (const cut of cuts) {
    if (cut.kind === 'rub off bud') continue;
    for (const id of idsBeyond(tree, cut)) {
      const fromM = id === cut.target ? cut.atM : 0;
      takenFromM.set(id, Math.min(fromM, takenFromM.get(id) ?? Number.POSITIVE_INFINITY));
    }
  }
  let [all, taken] = [0, 0];
  const suckers = onSuckers(tree);
  for (const { id, condition, foliage, buds } of tree.axes) {
    if (suckers.has(id) || condition === 'dead') continue;
    const fromM = takenFromM.get(id) ?? Number.POSITIVE_INFINITY;
    const leaves = foliage === null ? 0 : foliage.count * foliage.midribM ** 2;
    all += inLeaf ? leaves : buds.length;
    // Leaves beyond a shortening are few: such a cut takes ten centimetres, or dead wood.
    taken += inLeaf ? (fromM === 0 ? leaves : 0) : buds.filter(({ atM }) => atM >= fromM).length;
  }
  return all === 0 ? 0 : taken / all;
}

/**
 * Sections of all cuts of wood over that of the trunk half-way up. Green shoots of this season, which close soon, are left out, and dead
 * wood, which is wounded no further and must not wait (our choice).
 */
export function cutAreaShare(context: RuleContext, cuts: readonly WoodCut[]): number {
  const { placed, trunk } = context;
  const ofTrunk = radiusAtM(trunk, trunk.lengthM / 2) ** 2;
  const ofCuts = cuts.reduce((sum, { kind, target, atM }) => {
    const axis = placed.get(target);
    const isWood = kind !== 'rub off bud' && axis !== undefined && !isGreen(context, axis);
    return isWood && axis.axis.condition !== 'dead' ? sum + radiusAtM(axis, atM) ** 2 : sum;
  }, 0);
  return ofTrunk === 0 ? 0 : ofCuts / ofTrunk;
}

const isSick =
  ({ placed }: RuleContext) =>
  ({ target }: WoodCut): boolean =>
    ['dead', 'diseased'].includes(placed.get(target)?.axis.condition ?? '');

/** What a grower should know of the amount: the wood on a tree in rest (leaves are told elsewhere), and the wounds. */
export function amountRemarks(context: RuleContext, cuts: readonly WoodCut[]): Remark[] {
  const { tree, values } = context;
  const { removedShareWarnFraction, cutAreaWarnFraction } = values;
  const remarks: Remark[] = [];
  const share = standsInLeaf(tree) ? 0 : bearingShare(tree, cuts);
  if (share > removedShareWarnFraction) {
    remarks.push({ about: 'wood removed', share, limit: removedShareWarnFraction });
  }
  const wounds = cutAreaShare(context, cuts);
  if (wounds > cutAreaWarnFraction) {
    remarks.push({
      about: 'wounds',
      share: wounds,
      limit: cutAreaWarnFraction,
      hasSick: cuts.some(isSick(context)),
    });
  }
  return remarks;
}
