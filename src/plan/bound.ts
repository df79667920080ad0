/**
 * No set is worth more than this: a bound on keep-sets, and branch and bound with it.
 *
 * Members are put in groups of a few that harm each other most. With some groups decided, each set of another group is worth at
 * most what its shoots bear beside those decided, since shoots added later only take light; and of each shoot decided the
 * loss to one of the other groups is counted, too. So the best sets of all groups, each for itself, bound the whole. What the
 * roots can feed is bound by tangents: with load x = set / held and N(x) = 1 / keptAtLoad(x), which is convex,
 *
 *   ripe = R / N(x) >= V - W   implies   R - V b set + W+ N(most) - W- >= V a,   N(x) >= a + b set
 *
 * where R is the figs that would ripen on a tree without overload, W+ - W- what wood brings less upkeep and penalties. No
 * set that breaks it for one tangent is worth V. Dropped: that overload delays ripening, which only lowers the worth.
 */
import { type LoadRange, rangesOf } from './loadRanges.ts';
import type { KeepProblem } from './search.ts';

/** Sums over some shoots that stand. */
export interface KeepPart {
  /** Figs set by bearing node; entry 0 is unused. */
  readonly setByBearing: Float64Array;
  /** What wood brings, and the upkeep, figs. */
  plus: number;
  minus: number;
}

/** A problem that can be looked at in parts. */
export interface PartedProblem extends KeepProblem {
  become(kept: ArrayLike<number>): void;
  /** The same, with all members kept, to be changed for itself. */
  fork(): PartedProblem;
  /** Chance that a fig ripens at a load, by bearing node. */
  ripeAtLoad(load: number): Float64Array;
  /** Figs that the roots can feed. */
  readonly held: number;
  /** Adds the standing shoots of these members; member `count` is all that always stands. */
  addPart(member: number, part: KeepPart): void;
  /** What a member takes from each of the others were each of them alone with it; last what always stands. */
  harmOf(member: number): Float64Array;
  /** Least cost in limits of all sets that keep `least` and nothing beyond `most`. */
  penaltyFloor(least: ArrayLike<number>, most: ArrayLike<number>): number;
}

/** Sets of a group that may still be the best, as bits of its members; of all groups. */
export type Domains = readonly (readonly number[])[];

/** The open sets of one group beside what is decided; entry per set. */
interface GroupTable {
  readonly group: number;
  readonly sets: readonly number[];
  readonly parts: readonly KeepPart[];
  /** Figs that the shoots of each set set at least, with all that is open standing; empty where the roots feed any number. */
  readonly least: readonly Float64Array[];
  /** What the set adds to the penalty. */
  readonly penalty: Float64Array;
}

export class Bounds {
  readonly groups: readonly (readonly number[])[];
  evaluations = 0;
  /** Here what is open is gone, there it stands; there only where more set can mean fewer ripe. */
  private readonly problem: PartedProblem;
  private readonly crowded: PartedProblem | null;
  private readonly ranges: readonly LoadRange[];
  private readonly bearings: number;
  private readonly harm: readonly Float64Array[];
  /** Decided members that stay, and those that may: 1. */
  private readonly least: Uint8Array;
  private readonly most: Uint8Array;

  /** Takes all members out. */
  constructor(problem: PartedProblem, groupSize: number) {
    this.problem = problem;
    const { count, held } = problem;
    this.least = new Uint8Array(count);
    this.most = new Uint8Array(count).fill(1);
    this.crowded = Number.isFinite(held) ? problem.fork() : null;
    problem.become(this.least);
    this.harm = Array.from({ length: count }, (_, i) => problem.harmOf(i));
    this.groups = grouped(this.harm, count, groupSize);
    this.bearings = problem.ripeAtLoad(0).length;
    const most = this.tables(this.whole()).map(({ parts }) => Math.max(...parts.map(setOf)));
    this.ranges = rangesOf(problem, most.reduce((sum, set) => sum + set, 0) / held);
  }

  /** All sets there are. */
  whole(): Domains {
    return this.groups.map((group) => Array.from({ length: 2 ** group.length }, (_, set) => set));
  }

  /** Decides what all sets of a group agree on, and leaves the rest of it open. */
  settle(domains: Domains): void {
    this.groups.forEach((group, g) => {
      const sets = domains[g] as readonly number[];
      const [stay, may] = [sets.reduce((all, set) => all & set), sets.reduce((all, set) => all | set)];
      group.forEach((member, bit) => {
        this.put(member, (stay >> bit) & 1, (may >> bit) & 1);
      });
    });
  }

  /** Tables of the groups that have more than one set, beside all that is settled. */
  tables(domains: Domains): GroupTable[] {
    const open = [...this.groups.keys()].filter((g) => (domains[g]?.length ?? 0) > 1);
    const decided = this.groups.flatMap((group, g) => (open.includes(g) ? [] : group));
    const standing = [...decided.filter((member) => this.least[member] === 1), this.problem.count];
    const harmed = new Map(open.map((g): [number, number[]] => [g, []]));
    for (const member of standing) {
      const from = open.map((g) => this.harmFrom(this.groups[g] as readonly number[], member));
      harmed.get(open[from.indexOf(Math.max(...from))] ?? -1)?.push(member);
    }
    return open.map((g) => this.table(g, domains[g] as readonly number[], harmed.get(g) ?? []));
  }

  /** What those of a group that are open might take from a member. */
  private harmFrom(group: readonly number[], member: number): number {
    return group.reduce(
      (sum, i) => sum + (this.least[i] === this.most[i] ? 0 : (this.harm[i]?.[member] as number)),
      0,
    );
  }

  private table(g: number, sets: readonly number[], harmed: readonly number[]): GroupTable {
    const { problem, crowded, least, most } = this;
    const group = this.groups[g] as readonly number[];
    const before = group.map((member) => [least[member] as number, most[member] as number] as const);
    const floor = this.floor();
    const parts: KeepPart[] = [];
    const lows: Float64Array[] = [];
    const penalty = new Float64Array(sets.length);
    for (const n of fewFlips(sets)) {
      const set = sets[n] as number;
      group.forEach((member, bit) => {
        this.put(member, (set >> bit) & 1, (set >> bit) & 1);
      });
      const counted = [...group.filter((_, bit) => (set >> bit) & 1), ...harmed];
      parts[n] = sumOf(problem, counted, this.bearings);
      if (crowded !== null) lows[n] = sumOf(crowded, counted, this.bearings).setByBearing;
      penalty[n] = problem.penaltyFloor(least, most) - floor;
      this.evaluations++;
    }
    group.forEach((member, bit) => {
      this.put(member, ...(before[bit] as readonly [number, number]));
    });
    return { group: g, sets, parts, least: lows, penalty };
  }

  /** Whether a member surely stays, and whether it may. */
  private put(member: number, stays: number, may: number): void {
    if (this.least[member] !== stays) this.problem.flip(member);
    if (this.most[member] !== may) this.crowded?.flip(member);
    this.least[member] = stays;
    this.most[member] = may;
  }

  floor(): number {
    return this.problem.penaltyFloor(this.least, this.most);
  }

  kept(): Uint8Array {
    return this.least.slice();
  }

  /** Whether a set of those still open may be worth so much, for all that is known. */
  mayBe(value: number, tables: readonly GroupTable[]): boolean {
    const wanted = value + this.floor();
    return this.ranges.some(({ lines, ripe, mostN }) =>
      lines.every(({ a, b }) => {
        const share = ripe.map((chance) => chance - Math.max(0, wanted) * b);
        let sum = -wanted * (wanted >= 0 ? a : mostN);
        for (const table of tables) sum += Math.max(...worthsOf(table, share, mostN));
        return sum >= 0;
      }),
    );
  }

  /** The sets of each table that one worth so much may have; all other groups are left as they are. */
  narrowed(value: number, tables: readonly GroupTable[], domains: Domains): Domains {
    const open = tables.map(({ sets }) => new Uint8Array(sets.length));
    const wanted = value + this.floor();
    for (const { lines, ripe, mostN } of this.ranges) {
      const alive = open.map((already) => new Uint8Array(already.length).fill(1));
      for (const { a, b } of lines) {
        const share = ripe.map((chance) => chance - Math.max(0, wanted) * b);
        const worths = tables.map((table) => worthsOf(table, share, mostN));
        const most = worths.map((worth) => Math.max(...worth));
        const sum = most.reduce((all, one) => all + one, -wanted * (wanted >= 0 ? a : mostN));
        worths.forEach((worth, t) => {
          worth.forEach((one, n) => {
            if (sum - (most[t] as number) + one < 0) (alive[t] as Uint8Array)[n] = 0;
          });
        });
      }
      alive.forEach((may, t) => {
        may.forEach((one, n) => {
          if (one === 1) (open[t] as Uint8Array)[n] = 1;
        });
      });
    }
    const left = new Map(tables.map(({ group, sets }, t) => [group, sets.filter((_, n) => open[t]?.[n])]));
    return domains.map((sets, g) => left.get(g) ?? sets);
  }

  /** Worth of what is decided, when all is. */
  value(): number {
    this.evaluations++;
    return this.problem.value();
  }

  /** No set of those still open is worth more. */
  bound(tables: readonly GroupTable[]): number {
    const floor = this.floor();
    let [low, high] = [-floor, -floor + 1];
    while (this.mayBe(high, tables)) high = 2 * high + floor + 1;
    for (let step = 0; step < 30; step++) {
      const middle = (low + high) / 2;
      if (this.mayBe(middle, tables)) low = middle;
      else high = middle;
    }
    return high;
  }
}

/** What each set of a table brings. */
function worthsOf({ parts, least, penalty }: GroupTable, share: Float64Array, mostN: number): Float64Array {
  return penalty.map((cost, set) => {
    const { setByBearing, plus, minus } = parts[set] as KeepPart;
    let sum = mostN * plus - minus - cost;
    for (let n = 1; n < share.length; n++) {
      const each = share[n] as number;
      sum += each * ((each > 0 ? setByBearing : (least[set] ?? setByBearing))[n] as number);
    }
    return sum;
  });
}

function sumOf(problem: PartedProblem, members: readonly number[], bearings: number): KeepPart {
  const part = { setByBearing: new Float64Array(bearings), plus: 0, minus: 0 };
  for (const member of members) problem.addPart(member, part);
  return part;
}

const setOf = ({ setByBearing }: KeepPart): number => setByBearing.reduce((sum, set) => sum + set, 0);

/** Indices of sets in the order of a Gray code, in which few members change from one to the next. */
const fewFlips = (sets: readonly number[]): number[] =>
  [...sets.keys()].sort((a, b) => placeOf(sets[a] as number) - placeOf(sets[b] as number));

/** Place of a set in the Gray code. */
function placeOf(set: number): number {
  let place = set;
  for (let rest = set >> 1; rest > 0; rest >>= 1) place ^= rest;
  return place;
}

/** Joins those that harm each other most, while a group holds them; those that shade most others come first. */
function grouped(harm: readonly Float64Array[], count: number, size: number): number[][] {
  const pairs: { readonly i: number; readonly j: number; readonly loss: number }[] = [];
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < i; j++) {
      pairs.push({ i, j, loss: (harm[i]?.[j] as number) + (harm[j]?.[i] as number) });
    }
  }
  pairs.sort((a, b) => b.loss - a.loss || a.i - b.i || a.j - b.j);
  const groupOf = Array.from({ length: count }, (_, i) => [i]);
  for (const { i, j } of pairs) {
    const [a, b] = [groupOf[i] as number[], groupOf[j] as number[]];
    if (a === b || a.length + b.length > size) continue;
    a.push(...b);
    for (const member of b) groupOf[member] = a;
  }
  const weight = (group: readonly number[]): number =>
    group.reduce((sum, i) => sum + (harm[i]?.reduce((all, loss) => all + loss, 0) as number), 0);
  return [...new Set(groupOf)].sort((a, b) => weight(b) - weight(a));
}
