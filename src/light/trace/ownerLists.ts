/** Lists of owners with shares, each distinct list kept once and known by its number. */
import { numbersFor, type Wave } from '../ledger.ts';

/** Flat storage: list l is entries listStart[l] to listStart[l + 1] (excluded) of the two others. */
export interface OwnerListArrays {
  readonly listStart: Int32Array;
  readonly listOwner: Int32Array;
  readonly listShare: Float32Array;
}

const startSlots = 1024;

/** One step of FNV-1a with a whole 32-bit word, then a rotation so that high bits reach the slot too. */
function stir(h: number, word: number): number {
  const x = Math.imul(h ^ word, 0x01000193);
  return (x << 13) | (x >>> 19);
}

const seedOfHash = 0x811c9dc5 | 0;

function grown<T extends Int32Array | Float32Array>(array: T, make: (length: number) => T): T {
  const bigger = make(2 * array.length);
  bigger.set(array);
  return bigger;
}

const integers = (length: number): Int32Array => new Int32Array(length);

/** Pairs of owner and share, each kept once. */
class Veils {
  owner: Int32Array = integers(64);
  share = new Float32Array(64);
  count = 0;
  /** The pair of the same owner that was met before it; -1 for none. */
  private before: Int32Array = integers(64);
  /** Per owner: its pair that was met last. */
  private last = integers(64).fill(-1);

  /** Number of a pair. */
  of(owner: number, share: number): number {
    while (owner >= this.last.length) {
      const { length } = this.last;
      this.last = grown(this.last, integers);
      this.last.fill(-1, length);
    }
    for (let veil = this.last[owner] as number; veil >= 0; veil = this.before[veil] as number) {
      if (this.share[veil] === share) return veil;
    }
    return this.add(owner, share);
  }

  private add(owner: number, share: number): number {
    if (this.count === this.owner.length) {
      this.owner = grown(this.owner, integers);
      this.before = grown(this.before, integers);
      this.share = grown(this.share, (n) => new Float32Array(n));
    }
    const veil = this.count++;
    this.owner[veil] = owner;
    this.share[veil] = share;
    this.before[veil] = this.last[owner] as number;
    this.last[owner] = veil;
    return veil;
  }
}

/**
 * Gathers the entries of one list with `put`, then gives it its number with `close`. Entries may come in any order;
 * those of one owner are multiplied. List 0 is the empty one. Shares are kept to single precision.
 */
export class OwnerLists {
  /** Entries of the list being gathered. */
  private owners = integers(64);
  private shares = new Float32Array(64);
  private gathered = 0;
  private readonly veils = new Veils();
  /** Entries of the lists, and of the one being closed. */
  private entries = integers(startSlots);
  private starts = integers(startSlots);
  private hashes = integers(startSlots);
  /** Open addressing, linear probing; number of the list plus 1, 0 for free. */
  private slots = integers(startSlots);
  private listCount = 1;
  /** Where the list being closed begins and ends. */
  private from = 0;
  private to = 0;

  /** How many lists there are. */
  get count(): number {
    return this.listCount;
  }

  /** Adds an entry to the list being gathered, in its place by owner. */
  put(owner: number, share: number): void {
    let at = this.gathered;
    while (at > 0 && (this.owners[at - 1] as number) > owner) at--;
    if (at > 0 && this.owners[at - 1] === owner) {
      this.shares[at - 1] = (this.shares[at - 1] as number) * share;
      return;
    }
    if (this.gathered === this.owners.length) {
      this.owners = grown(this.owners, integers);
      this.shares = grown(this.shares, (n) => new Float32Array(n));
    }
    for (let k = this.gathered; k > at; k--) {
      this.owners[k] = this.owners[k - 1] as number;
      this.shares[k] = this.shares[k - 1] as number;
    }
    this.owners[at] = owner;
    this.shares[at] = share;
    this.gathered++;
  }

  /** Ends the list being gathered: its number, the old one when such a list is there already. */
  close(): number {
    if (this.gathered === 0) return 0;
    for (let k = 0; k < this.gathered; k++) {
      this.push(this.veils.of(this.owners[k] as number, this.shares[k] as number));
    }
    this.gathered = 0;
    return this.closePushed();
  }

  /** Copies of the storage, cut to length. */
  arrays(): OwnerListArrays {
    const { owner, share } = this.veils;
    const { entries, from } = this;
    const [listOwner, listShare] = [new Int32Array(from), new Float32Array(from)];
    for (let i = 0; i < from; i++) {
      const veil = entries[i] as number;
      listOwner[i] = owner[veil] as number;
      listShare[i] = share[veil] as number;
    }
    return { listStart: this.starts.slice(0, this.listCount + 1), listOwner, listShare };
  }

  /** The same as a wave keeps it. */
  veiled(): Pick<Wave, 'listStart' | 'listVeil' | 'veilOwner' | 'veilShare'> {
    const { owner, share, count } = this.veils;
    const listVeil = numbersFor(count, this.from);
    listVeil.set(this.entries.subarray(0, this.from));
    return {
      listStart: this.starts.slice(0, this.listCount + 1),
      listVeil,
      veilOwner: owner.slice(0, count),
      veilShare: share.slice(0, count),
    };
  }

  private push(veil: number): void {
    if (this.to === this.entries.length) this.entries = grown(this.entries, integers);
    this.entries[this.to++] = veil;
  }

  private closePushed(): number {
    const hash = this.hashPushed();
    let slot = hash & (this.slots.length - 1);
    for (;;) {
      const list = (this.slots[slot] as number) - 1;
      if (list < 0) break;
      if (this.hashes[list] === hash && this.equalsPushed(list)) {
        this.to = this.from;
        return list;
      }
      slot = (slot + 1) & (this.slots.length - 1);
    }
    return this.keepPushed(slot, hash);
  }

  private hashPushed(): number {
    let h = seedOfHash;
    for (let i = this.from; i < this.to; i++) h = stir(h, this.entries[i] as number);
    return h ^ (h >>> 15);
  }

  private equalsPushed(list: number): boolean {
    const start = this.starts[list] as number;
    const size = this.to - this.from;
    if ((this.starts[list + 1] as number) - start !== size) return false;
    for (let i = 0; i < size; i++) {
      if (this.entries[start + i] !== this.entries[this.from + i]) return false;
    }
    return true;
  }

  private keepPushed(slot: number, hash: number): number {
    if (this.listCount + 2 >= this.starts.length) {
      this.starts = grown(this.starts, integers);
      this.hashes = grown(this.hashes, integers);
    }
    const list = this.listCount++;
    this.slots[slot] = list + 1;
    this.hashes[list] = hash;
    this.starts[list + 1] = this.to;
    this.from = this.to;
    if (2 * this.listCount > this.slots.length) this.rehash();
    return list;
  }

  private rehash(): void {
    const slots = integers(2 * this.slots.length);
    for (let list = 1; list < this.listCount; list++) {
      let slot = (this.hashes[list] as number) & (slots.length - 1);
      while (slots[slot] !== 0) slot = (slot + 1) & (slots.length - 1);
      slots[slot] = list + 1;
    }
    this.slots = slots;
  }
}
