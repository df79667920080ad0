/**
 * What if only these cuts were made? Answered from the ledger, in milliseconds.
 *
 * The canopy is that of the whole plan, with the buds that it rubs off grown as strong as those it keeps. So with
 * every cut ticked the answer is the plan's own score; with fewer ticked the shoots stand somewhat stronger than they
 * would be, sharing with more. On the sample tree in a pot, no cut ticked gives 2 to 9 % more figs and a fifth to a quarter
 * more fruiting wood than "do nothing" does on its own canopy. On a tree in leaf nothing regrows and the two are the same.
 */
import { ownersLeft } from '../growth/owners.ts';
import type { KeepSet } from '../light/ledger.ts';
import { mergeForSearch, mergeRows } from '../light/mergeForSearch.ts';
import type { SearchOptions, SearchTable } from '../light/searchTable.ts';
import type { CutToMake } from './applyCuts.ts';
import { CropCount } from './crop.ts';
import { firstCropFigs } from './firstCrop.ts';
import { goneIds, keptLengths } from './gone.ts';
import type { PlanInput } from './input.ts';
import { type Score, scoreCanopy, shootLight } from './score.ts';
import { receiverOf, type TracedSeason, type TracedStage } from './tracedSeason.ts';

export type TrialCut = CutToMake & { readonly id: string };

export interface TrialContext {
  readonly traced: TracedSeason;
  /** Of the whole season at full leaf, and of each stage. */
  readonly season: SearchTable;
  readonly stages: readonly SearchTable[];
  readonly cuts: readonly TrialCut[];
  /** Those of them that the canopy was grown for: the plan, without what is the grower's call. */
  readonly planned: readonly TrialCut[];
  readonly input: PlanInput;
  readonly seasonYear: number;
}

export interface TrialAnswer {
  readonly score: Score;
  /** Light of the shoots that still stand, over the season; those without nodes are left out. */
  readonly shoots: readonly { readonly id: string; readonly lightFraction: number }[];
  /** The same at every node of theirs. */
  readonly nodes: readonly { readonly shootId: string; readonly node: number; readonly share: number }[];
}

/** Tables that may serve other cuts too: what else may be taken away in them, and those made for cuts before. */
export interface TrialTables {
  readonly also: readonly string[];
  readonly before: TrialContext | null;
}

export function trialContext(
  traced: TracedSeason,
  cuts: readonly TrialCut[],
  input: PlanInput,
  seasonYear: number,
  planned: readonly TrialCut[] = cuts,
  { also, before }: TrialTables = { also: [], before: null },
): TrialContext {
  const { full, light } = traced;
  const { owners } = full.canopy;
  const keep = ownersLeft(owners, new Set());
  const keptByAll = ownersLeft(owners, new Set([...goneIds(input.tree, cuts), ...also]));
  const free = keep.map((stands, owner) => (stands === 1 && keptByAll[owner] === 0 ? 1 : 0));
  if (before?.traced === traced && free.every((may, owner) => may === 0 || before.season.frees(owner))) {
    return { ...before, cuts, planned, input, seasonYear };
  }
  const season = mergeForSearch(full.ledger, light, { free, keep });
  const stages =
    traced.stages.length === 1 ? [season] : traced.stages.map((stage) => tableOf(stage, { free, keep }));
  return { traced, season, stages, cuts, planned, input, seasonYear };
}

/** A row for each node of the stage, without light where none is asked for. */
function tableOf(stage: TracedStage, options: SearchOptions): SearchTable {
  const { ledger, light } = stage;
  const receiver = receiverOf(stage);
  return mergeRows([{ ledger, light, receiver, factor: new Float64Array(receiver.length).fill(1) }], options);
}

/** Throws on an id that is no cut of the plan. */
export function tryCuts(context: TrialContext, cutIds: readonly string[]): TrialAnswer {
  const known = new Map(context.cuts.map((cut) => [cut.id, cut]));
  const made = cutIds.map((id) => {
    const cut = known.get(id);
    if (cut === undefined) throw new Error(`tryCuts: the plan has no such cut, got ${id}`);
    return cut;
  });
  const tried = tryThese(context, made);
  const { canopy } = context.traced.full;
  const shoots = canopy.shoots.flatMap(({ id, owner }, i) => {
    const lightFraction = tried.shootLights[i] ?? null;
    return tried.keep[owner] === 1 && lightFraction !== null ? [{ id, lightFraction }] : [];
  });
  const nodes = canopy.nodes.flatMap(({ owner, node }, i) => {
    if (tried.keep[owner] === 0) return [];
    return [{ shootId: canopy.owners[owner]?.id ?? '', node, share: tried.nodeLight[i] as number }];
  });
  return { score: tried.score, shoots, nodes };
}

export interface Tried {
  readonly score: Score;
  readonly keep: KeepSet;
  /** Share of open sky per node and per shoot of the canopy at full leaf, over the season. */
  readonly nodeLight: Float64Array;
  readonly shootLights: readonly (number | null)[];
  /** Figs set and figs that ripen at each site of the season, whether it stands or not. */
  readonly siteSet: Float64Array;
  readonly siteFigs: Float64Array;
}

/** Toggles beyond this cost more than a fresh sum; our choice. */
const mostToggles = 4;

/** Brings a table to a keep-set by a few toggles, whose sums differ by rounding from fresh ones. */
function follow(table: SearchTable, keep: KeepSet): void {
  const others = keep.reduce<number[]>((list, stands, owner) => {
    if (stands !== table.keep[owner]) list.push(owner);
    return list;
  }, []);
  if (others.length > mostToggles) table.reset(keep);
  else for (const owner of others) table.toggle(owner);
}

/**
 * The same with all that the plan itself reads from it.
 * @param isNear whether the cuts tried last were nearly these: quicker, with rounding of its own
 */
export function tryThese(
  { traced, season, stages, input, seasonYear }: TrialContext,
  cuts: readonly CutToMake[],
  isNear = false,
): Tried {
  const { full, places, sites, crop } = traced;
  const { canopy } = full;
  const keep = ownersLeft(canopy.owners, goneIds(input.tree, cuts));
  for (const table of new Set([season, ...stages])) {
    if (isNear) follow(table, keep);
    else table.reset(keep);
  }
  const nodeLight = season.share.slice();
  const figs = new CropCount(
    sites,
    stages.map(({ share }) => share),
    keep,
    crop,
  );
  const counted = figs.count();
  const firstCrop = firstCropOf(input, cuts, traced, keep, seasonYear);
  const score = scoreCanopy({
    canopy,
    places,
    nodeLight,
    keep,
    crop: counted,
    firstCropFigs: firstCrop,
    values: input.values,
  });
  const siteSet = Float64Array.from({ length: sites.count }, (_, i) => figs.setAt(i));
  const shares = figs.ripeShares(counted.set);
  return {
    score,
    keep,
    nodeLight,
    shootLights: shootLight(canopy, places, nodeLight),
    siteSet,
    siteFigs: siteSet.map((set, i) => set * (shares[sites.bearing[i] as number] as number)),
  };
}

function firstCropOf(
  { tree, values, bearsFirstCrop }: PlanInput,
  cuts: readonly CutToMake[],
  { full: { canopy } }: TracedSeason,
  keep: KeepSet,
  seasonYear: number,
): number {
  if (!bearsFirstCrop) return 0;
  const standing = new Set(
    canopy.owners.filter((owner, i) => owner !== null && keep[i] === 1).map((owner) => owner?.id),
  );
  return firstCropFigs(tree, (id) => standing.has(id), keptLengths(cuts), seasonYear, values);
}
