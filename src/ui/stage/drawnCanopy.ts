/** The canopy that is drawn: the tree as it was sketched, or the full leaf that the light is worked out for. */
import type { TreeFile } from '../../document/treeFile.ts';
import { sameWood } from '../../editor/edits/pin.ts';
import { planInputOf } from '../../engine/planInput.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { growCanopy } from '../../growth/growCanopy.ts';
import type { PlanInput } from '../../plan/input.ts';
import { fullLeafHeatGdd8 } from '../../plan/stages.ts';
import { seasonDates } from '../../season/seasonDates.ts';

type When = 'as sketched' | 'in full leaf';

interface Grown {
  readonly file: TreeFile;
  readonly heatGdd8: number;
  readonly canopy: Canopy;
}

/** Grown once a tree: the stage and the sheets ask for the same one, and sheets come and go. */
const grown: Readonly<Record<When, WeakMap<TreeFile, Canopy>>> = {
  'as sketched': new WeakMap(),
  'in full leaf': new WeakMap(),
};
/** Grown last: it serves the next file too when nothing has changed that a leaf grows by. */
const last = new Map<When, Grown>();

/** Seed and heat are the engine's own, so that every leaf is drawn where its light was measured. */
export function drawnCanopy(file: TreeFile, when: When): Canopy {
  const known = grown[when].get(file);
  if (known !== undefined) return known;
  const next = grow(file, when, last.get(when));
  last.set(when, next);
  grown[when].set(file, next.canopy);
  return next.canopy;
}

/** What the leaves grow by and when, apart from the wood: the same for a tree that is pulled. */
const seasonAlike = (a: TreeFile, b: TreeFile): boolean =>
  a.site === b.site && a.season === b.season && a.settings === b.settings && a.cultivar === b.cultivar;

const growsAlike = (a: TreeFile, b: TreeFile): boolean =>
  a.standing === b.standing && a.settings === b.settings && sameWood(a, b);

function heatOf(file: TreeFile, input: PlanInput, when: When): number {
  const season = seasonDates({ ...input, site: input.site });
  return when === 'in full leaf'
    ? fullLeafHeatGdd8(input, season)
    : season.heat.sumAt(file.season.sketchedOn);
}

function grow(file: TreeFile, when: When, before: Grown | undefined): Grown {
  const input = planInputOf(file, {});
  const heatGdd8 =
    before !== undefined && seasonAlike(before.file, file) ? before.heatGdd8 : heatOf(file, input, when);
  if (before?.heatGdd8 === heatGdd8 && growsAlike(before.file, file)) return { ...before, file };
  const { tree, stance, values, leafSeed: seed } = input;
  const canopy = growCanopy({ tree, stance, values, heatGdd8, seed, gone: new Set() });
  return { file, heatGdd8, canopy };
}
