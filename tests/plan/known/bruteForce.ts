/**
 * What to keep, by trying every set, written anew from the equations of the model alone (8.1 to 8.3, 9.3, 9.5), to judge the plan by.
 * It takes from the program the canopy that the tree grows, the calendar and the light of the sky; light in the canopy, figs, limits
 * and search are its own. Straight limbs only, buds told apart by their place on them; no pot that is turned, no walls.
 */
import type { Canopy } from '../../../src/growth/canopy.ts';
import { growCanopy } from '../../../src/growth/growCanopy.ts';
import { cellLight } from '../../../src/light/sky/cellLight.ts';
import type { PlanInput } from '../../../src/plan/input.ts';
import { addDays } from '../../../src/season/calendar.ts';
import { seasonDates } from '../../../src/season/seasonDates.ts';
import type { Period } from '../../../src/season/site.ts';
import { type Ray, raysOfNodes } from './bruteLight.ts';

/** One bearing node: its rays in each stage it lives through, with the part of its life there. */
interface Fig {
  readonly member: number;
  readonly bearing: number;
  readonly lives: readonly { readonly part: number; readonly rays: readonly Packed[] }[];
}

/** A stretch of shoot between two nodes, at full leaf. */
interface Stretch {
  readonly member: number;
  readonly lengthM: number;
  readonly rays: readonly Packed[];
}

/** Rays that meet the same members alike, together. */
interface Packed {
  readonly brings: number;
  readonly members: readonly number[];
  readonly lets: readonly number[];
}

interface Stage {
  readonly canopy: Canopy;
  readonly period: Period;
  readonly isFull: boolean;
  readonly fromGdd8: number;
  readonly toGdd8: number;
}

export interface Question {
  readonly input: PlanInput;
  /** Ids of the buds or shoots to choose from: all that carry nodes. */
  readonly members: readonly string[];
  /** Of the rays. */
  readonly seed: number;
  readonly waves: number;
}

export interface Answer {
  readonly kept: readonly boolean[];
  readonly worth: number;
}

/** Worth of any set, and the best, on the canopy grown as if `notSharing` took no part of the reserve. */
export function bruteForce(question: Question, notSharing: ReadonlySet<string>) {
  const { input, members } = question;
  const stages = stagesOf(input, notSharing);
  const days = { from: stages[0]?.period.from ?? '', to: stages.at(-1)?.period.to ?? '' } as Period;
  const packed = stages.map((stage) => packedRays(question, stage, days));
  const figs = figsOf(question, stages, packed);
  const full = stages.findIndex(({ isFull }) => isFull);
  const stretches = stretchesOf(members, (stages[full] as Stage).canopy, packed[full] as Packed[][]);
  const { shoots } = (stages[full] as Stage).canopy;
  const places = members.map((id) => placedOf(input, id, shoots));
  const chance = ripens(input);
  const upkeep = upkeepOf(figs, shoots.length, chance);
  const ripe = ripeOf(input.potVolumeL, figs, chance);
  const worth = (kept: readonly boolean[]): number =>
    ripe(kept) +
    0.25 *
      stretches.reduce(
        (sum, s) => (kept[s.member] && share(s.rays, kept) >= 0.27 ? sum + s.lengthM : sum),
        0,
      ) -
    places.reduce((sum, { bud }, i) => (kept[i] ? sum + upkeep * (bud ? 1 : 0.2) : sum), 0) -
    penalty(input, places, kept);
  return { worth, best: () => bestOf(members.length, worth) };
}

function bestOf(count: number, worth: (kept: readonly boolean[]) => number): Answer {
  let best: Answer = { kept: [], worth: Number.NEGATIVE_INFINITY };
  for (let set = 0; set < 2 ** count; set++) {
    const kept = Array.from({ length: count }, (_, i) => ((set >> i) & 1) === 1);
    const value = worth(kept);
    if (value > best.worth) best = { kept, worth: value };
  }
  return best;
}

// The season, equations 6.3 and 8.3.

function stagesOf(input: PlanInput, notSharing: ReadonlySet<string>): Stage[] {
  const { tree, stance, values, leafSeed, site, budBreakOn, ripening } = input;
  const season = seasonDates({ site, budBreakOn, values, ripening });
  const { heat } = season;
  const end = heat.sumAt(season.ripeningEndsOn);
  const buds = tree.axes.some((axis) => axis.foliage === null && axis.buds.length > 0);
  const full = Math.min(700, end);
  const lastUseful = 465 + Math.max(0, end - ripeHeat(input));
  const heats = buds ? [465, full, lastUseful].filter((h) => h === full || Math.abs(h - full) > 75) : [full];
  let from = season.leafOutOn;
  return heats.map((heatGdd8, i): Stage => {
    const next = heats[i + 1];
    const changesOn = next === undefined ? null : heat.dateAt((heatGdd8 + next) / 2);
    const to = changesOn === null ? season.ripeningEndsOn : addDays(changesOn, -1);
    const period = { from, to };
    from = addDays(to, 1);
    const canopy = growCanopy({
      tree,
      stance,
      values,
      heatGdd8,
      seed: leafSeed,
      gone: new Set(),
      notSharing,
    });
    const [fromGdd8, toGdd8] = [heat.sumAt(period.from), heat.sumAt(from)];
    return { canopy, period, isFull: heatGdd8 === full, fromGdd8, toGdd8 };
  });
}

const ripeHeat = ({ ripening, values }: PlanInput): number =>
  ({
    early: values.firstRipeEarlyHeatGdd8,
    mid: values.firstRipeMidHeatGdd8,
    late: values.firstRipeLateHeatGdd8,
  })[ripening];

// Light, equation 5.2.

function packedRays(
  { input, members, seed, waves }: Question,
  { canopy, period, isFull }: Stage,
  wholeSeason: Period,
): Packed[][] {
  const { site, values } = input;
  const lightOver = (days: Period) =>
    cellLight({ site, groundReflectance: site.groundReflectance, period: days, skyKind: 'uniform' });
  const light = lightOver(period);
  const asked = {
    canopy,
    leafLets: 1 - Math.sqrt(1 - values.leafTransmittance - values.leafReflectance),
    light,
    seenIn: isFull ? lightOver(wholeSeason) : light,
    latitudeDeg: site.latitudeDeg,
    seed,
    waves: isFull ? waves : Math.ceil(waves / 2),
  };
  const memberOf = canopy.owners.map((owner) => members.indexOf(owner?.id ?? ''));
  return raysOfNodes(asked).map((rays) => pack(rays, memberOf));
}

function pack(rays: readonly Ray[], memberOf: readonly number[]): Packed[] {
  const found = new Map<string, { brings: number; members: number[]; lets: number[] }>();
  for (const { brings, passes } of rays) {
    let always = brings;
    const met: [number, number][] = [];
    for (const [owner, lets] of passes) {
      const member = memberOf[owner] ?? -1;
      if (member < 0) always *= lets;
      else met.push([member, lets]);
    }
    if (always === 0) continue;
    met.sort(([a], [b]) => a - b);
    const key = JSON.stringify(met);
    const known = found.get(key);
    if (known === undefined)
      found.set(key, { brings: always, members: met.map(([m]) => m), lets: met.map(([, l]) => l) });
    else known.brings += always;
  }
  return [...found.values()];
}

function share(rays: readonly Packed[], kept: readonly boolean[]): number {
  let sum = 0;
  for (const { brings, members, lets } of rays) {
    let passes = brings;
    for (let i = 0; i < members.length; i++) if (kept[members[i] as number]) passes *= lets[i] as number;
    sum += passes;
  }
  return sum;
}

// Figs, equations 7.10 and 8.1 to 8.3.

function figsOf(
  { input, members }: Question,
  stages: readonly Stage[],
  packed: readonly Packed[][][],
): Fig[] {
  const last = stages.at(-1) as Stage;
  const hangs = ripeHeat(input) - 465;
  return last.canopy.nodes.flatMap(({ owner, node }): Fig[] => {
    const blind = last.canopy.shoots.find((shoot) => shoot.owner === owner)?.blindNodes ?? Number.NaN;
    const bearing = node - blind;
    if (bearing < 1) return [];
    const appears = 465 + 75 * (bearing - 1);
    const lived = stages.map((stage, s) => {
      const at = stage.canopy.nodes.findIndex((one) => one.owner === owner && one.node === node);
      const heat = Math.min(stage.toGdd8, appears + hangs) - Math.max(stage.fromGdd8, appears);
      return { heat: at < 0 ? 0 : Math.max(0, heat), rays: packed[s]?.[at] ?? [] };
    });
    const whole = lived.reduce((sum, { heat }) => sum + heat, 0);
    const lives =
      whole > 0
        ? lived.map(({ heat, rays }) => ({ part: heat / whole, rays }))
        : [{ part: 1, rays: lived.at(-1)?.rays ?? [] }];
    const member = members.indexOf(last.canopy.owners[owner]?.id ?? '');
    return [{ member, bearing, lives: lives.filter(({ part }) => part > 0) }];
  });
}

function stretchesOf(members: readonly string[], canopy: Canopy, packed: readonly Packed[][]): Stretch[] {
  return canopy.nodes.map(({ owner, node, atM }, i) => {
    const below = canopy.nodes.find((one) => one.owner === owner && one.node === node - 1)?.atM ?? 0;
    const member = members.indexOf(canopy.owners[owner]?.id ?? '');
    return { member, lengthM: atM - below, rays: packed[i] ?? [] };
  });
}

/** Equation 8.1. */
function setBy(x: number): number {
  if (x <= 0.12) return 0;
  if (x >= 0.45) return 1;
  const w = x < 0.27 ? 0.15 : 0.18;
  return 0.5 + (0.5 / 0.45) * (1 / (1 + Math.exp((-Math.log(19) * (x - 0.27)) / w)) - 0.5);
}

/** Equation 8.2: chance to ripen, by bearing node and by how late. */
function ripens(input: PlanInput): (bearing: number, lateGdd8: number) => number {
  const { site, budBreakOn, values, ripening } = input;
  const { heat, ripeningEndsOn } = seasonDates({ site, budBreakOn, values, ripening });
  const e = heat.sumAt(ripeningEndsOn);
  const h = ripeHeat(input);
  const s = (100 * Math.sqrt(3)) / Math.PI;
  return (bearing, lateGdd8) => 1 / (1 + Math.exp((h + 75 * (bearing - 1) + lateGdd8 - e) / s));
}

/** Equation 8.3. */
function ripeOf(potVolumeL: number | null, figs: readonly Fig[], ripe: ReturnType<typeof ripens>) {
  const held = potVolumeL === null ? Number.POSITIVE_INFINITY : 50 * (potVolumeL / 47) ** 0.52;
  return (kept: readonly boolean[]): number => {
    const standing = figs.filter(({ member }) => kept[member]);
    const set = standing.map(
      ({ lives }) => 0.9 * setBy(lives.reduce((x, { part, rays }) => x + part * share(rays, kept), 0)),
    );
    const q = set.reduce((sum, one) => sum + one, 0) / held;
    const late = 130 * Math.min(1, Math.max(0, q - 1));
    const ripened = standing.reduce(
      (sum, { bearing }, i) => sum + (set[i] as number) * ripe(bearing, late),
      0,
    );
    return ripened * (1 + q ** 4) ** (-1 / 4);
  };
}

// Upkeep and limits, equation 9.3.

/** Of a shoot from a bud; one in leaf has a fifth of it left. */
function upkeepOf(figs: readonly Fig[], shoots: number, ripe: ReturnType<typeof ripens>): number {
  const mean = figs.reduce((sum, { bearing }) => sum + 0.9 * ripe(bearing, 0), 0) / shoots;
  return Math.min(0.25, mean / 10);
}

interface Placed {
  readonly branch: string;
  readonly atM: number;
  readonly aroundDeg: number;
  readonly bud: boolean;
  readonly leafM2: number;
}

function placedOf({ tree }: PlanInput, id: string, shoots: Canopy['shoots']): Placed {
  for (const { id: branch, buds, parentId, atM } of tree.axes) {
    const bud = buds.find((one) => one.id === id);
    if (bud !== undefined) return { branch, atM: bud.atM, aroundDeg: bud.aroundDeg, bud: true, leafM2: 0 };
    if (branch === id) {
      const leafM2 = shoots.find((shoot) => shoot.id === id)?.leafAreaM2 ?? Number.NaN;
      return { branch: parentId ?? '', atM, aroundDeg: 0, bud: false, leafM2 };
    }
  }
  throw new Error(`placedOf: no such bud or shoot, got ${id}`);
}

function penalty({ tree, values }: PlanInput, places: readonly Placed[], kept: readonly boolean[]): number {
  const leaves = places.reduce((sum, { leafM2 }) => sum + leafM2, 0);
  const taken = places.reduce((sum, { leafM2 }, i) => (kept[i] ? sum : sum + leafM2), 0);
  let sum = leaves > 0 ? 1e7 * Math.max(0, taken / leaves - 0.33) : 0;
  for (const branch of new Set(places.map((place) => place.branch))) {
    const on = places.flatMap((place, i) =>
      place.branch === branch ? [{ ...place, kept: kept[i] === true }] : [],
    );
    const standing = on.filter((one) => one.kept);
    if (standing.length === 0) sum += 1e5;
    const lowM = 0.4 * limbLengthM(tree, branch);
    // Settled at bud break: shoots in leaf alone are not held to it.
    const hadBud = on.some((one) => one.bud && one.atM <= lowM);
    if (hadBud && !standing.some(({ atM }) => atM <= lowM)) sum += 1e4;
    const outermost = on.reduce((a, b) => (b.atM > a.atM ? b : a));
    if (!outermost.kept) sum += outermost.bud ? 100 : 1;
    const buds = standing.filter((one) => one.bud);
    // The limbs asked about are so short that one shoot for each 25 cm of them is fewer than any limb may hold.
    sum += 1000 * Math.max(0, buds.length - values.shootsPerScaffold);
    buds.forEach((a, i) => {
      sum += 1000 * buds.slice(i + 1).filter((b) => areClose(a, b, values.keptShootSpacingCm / 100)).length;
    });
  }
  return sum;
}

/** Of a straight limb. */
function limbLengthM({ axes }: PlanInput['tree'], id: string): number {
  const path = axes.find((axis) => axis.id === id)?.path ?? [];
  return Math.hypot(...(path.at(-1) ?? []));
}

function areClose(a: Placed, b: Placed, spacingM: number): boolean {
  const apartDeg = Math.abs(((a.aroundDeg - b.aroundDeg + 540) % 360) - 180);
  return Math.abs(a.atM - b.atM) < spacingM && apartDeg < 60;
}
