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

/** All sets of one group beside those decided; entry per set, whose bits are the group's members. */
interface GroupTable {
  readonly group: readonly number[];
  readonly parts: readonly KeepPart[];
  /** Figs that the shoots of each set set at least, with all that is open standing. */
  readonly least: readonly Float64Array[];
  /** What the set adds to the penalty. */
  readonly penalty: Float64Array;
}

/** Members 0 to 2^n - 1 of a Gray code, as the bit that changes. */
const changedBit = (n: number): number => 31 - Math.clz32(n & -n);

export class Bounds {
  readonly groups: readonly (readonly number[])[];
  evaluations = 0;
  /** Here what is open is gone, there it stands. */
  private readonly problem: PartedProblem;
  private readonly crowded: PartedProblem;
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
    this.crowded = problem.fork();
    problem.become(this.least);
    this.harm = Array.from({ length: count }, (_, i) => problem.harmOf(i));
    this.groups = grouped(this.harm, count, groupSize);
    this.bearings = problem.ripeAtLoad(0).length;
    const most = this.tables(0).map(({ parts }) => Math.max(...parts.map(setOf)));
    this.ranges = rangesOf(problem, most.reduce((sum, set) => sum + set, 0) / held);
  }

  /** Tables of the groups from the so-many-th on, beside those decided, which stand. */
  tables(from: number): GroupTable[] {
    const rest = this.groups.slice(from);
    const decided = this.groups.slice(0, from).flat();
    const standing = [...decided.filter((member) => this.least[member] === 1), this.problem.count];
    const harmed = rest.map((): number[] => []);
    for (const member of standing) {
      const from = rest.map((group) => group.reduce((sum, i) => sum + (this.harm[i]?.[member] as number), 0));
      harmed[from.indexOf(Math.max(...from))]?.push(member);
    }
    return rest.map((group, g) => this.table(group, harmed[g] as readonly number[]));
  }

  private table(group: readonly number[], harmed: readonly number[]): GroupTable {
    const { problem, least, most } = this;
    const parts: KeepPart[] = [];
    const lows: Float64Array[] = [];
    const penalty = new Float64Array(2 ** group.length);
    const floor = problem.penaltyFloor(least, most);
    this.decide(group, 0);
    for (let n = 0, set = 0; n < penalty.length; n++) {
      if (n > 0) {
        const bit = changedBit(n);
        set ^= 1 << bit;
        this.put(group[bit] as number, (set >> bit) & 1);
      }
      const counted = [...group.filter((_, bit) => (set >> bit) & 1), ...harmed];
      parts[set] = sumOf(problem, counted, this.bearings);
      lows[set] = sumOf(this.crowded, counted, this.bearings).setByBearing;
      penalty[set] = problem.penaltyFloor(least, most) - floor;
      this.evaluations++;
    }
    this.decide(group, null);
    return { group, parts, least: lows, penalty };
  }

  /** A member that is decided. */
  private put(member: number, stands: number): void {
    if (this.least[member] !== stands) this.problem.flip(member);
    if (this.most[member] !== stands) this.crowded.flip(member);
    this.least[member] = stands;
    this.most[member] = stands;
  }

  /** Decides a group: its set stands; null leaves it open again. */
  decide(group: readonly number[], set: number | null): void {
    group.forEach((member, bit) => {
      if (set !== null) {
        this.put(member, (set >> bit) & 1);
        return;
      }
      if (this.least[member] === 1) this.problem.flip(member);
      if (this.most[member] === 0) this.crowded.flip(member);
      this.least[member] = 0;
      this.most[member] = 1;
    });
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
        for (const table of tables) sum += mostOf(table, share, mostN);
        return sum >= 0;
      }),
    );
  }

  /** The same for each set of the first table by itself: 1 where one with it may be worth so much. */
  open(value: number, [first, ...others]: readonly GroupTable[]): Uint8Array {
    const open = new Uint8Array(first?.parts.length ?? 0);
    const wanted = value + this.floor();
    for (const { lines, ripe, mostN } of this.ranges) {
      const alive = open.map((already) => 1 - already);
      for (const { a, b } of lines) {
        if (!alive.includes(1)) break;
        const share = ripe.map((chance) => chance - Math.max(0, wanted) * b);
        let rest = -wanted * (wanted >= 0 ? a : mostN);
        for (const table of others) rest += mostOf(table, share, mostN);
        for (let set = 0; set < open.length; set++) {
          if (alive[set] === 1 && rest + worthOf(first as GroupTable, set, share, mostN) < 0) alive[set] = 0;
        }
      }
      alive.forEach((may, set) => {
        if (may === 1) open[set] = 1;
      });
    }
    return open;
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

/** What a set of a table brings. */
function worthOf(
  { parts, least, penalty }: GroupTable,
  set: number,
  share: Float64Array,
  mostN: number,
): number {
  const { setByBearing, plus, minus } = parts[set] as KeepPart;
  const low = least[set] as Float64Array;
  let sum = mostN * plus - minus - (penalty[set] as number);
  for (let n = 1; n < share.length; n++) {
    const each = share[n] as number;
    sum += each * ((each > 0 ? setByBearing[n] : low[n]) as number);
  }
  return sum;
}

function mostOf(table: GroupTable, share: Float64Array, mostN: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let set = 0; set < table.parts.length; set++) most = Math.max(most, worthOf(table, set, share, mostN));
  return most;
}

function sumOf(problem: PartedProblem, members: readonly number[], bearings: number): KeepPart {
  const part = { setByBearing: new Float64Array(bearings), plus: 0, minus: 0 };
  for (const member of members) problem.addPart(member, part);
  return part;
}

const setOf = ({ setByBearing }: KeepPart): number => setByBearing.reduce((sum, set) => sum + set, 0);

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
