/** Lists of owners with shares, each distinct list kept once and known by its number. */

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

function grown<T extends Int32Array | Float32Array>(array: T, make: (length: number) => T): T {
  const bigger = make(2 * array.length);
  bigger.set(array);
  return bigger;
}

/**
 * Gathers the entries of one list with `put`, then gives it its number with `close`. Entries may come in any order;
 * those of one owner are multiplied. List 0 is the empty one. Shares are kept to single precision.
 */
export class OwnerLists {
  private owners = new Int32Array(startSlots);
  private shares = new Float32Array(startSlots);
  private starts = new Int32Array(startSlots);
  private hashes = new Int32Array(startSlots);
  /** Open addressing, linear probing; number of the list plus 1, 0 for free. */
  private slots = new Int32Array(startSlots);
  private listCount = 1;
  /** Where the list being gathered begins and ends. */
  private from = 0;
  private to = 0;

  /** How many lists there are. */
  get count(): number {
    return this.listCount;
  }

  /** Adds an entry to the list being gathered, in its place by owner. */
  put(owner: number, share: number): void {
    let at = this.to;
    while (at > this.from && (this.owners[at - 1] as number) > owner) at--;
    if (at > this.from && this.owners[at - 1] === owner) {
      this.shares[at - 1] = (this.shares[at - 1] as number) * share;
      return;
    }
    if (this.to + 1 >= this.owners.length) {
      this.owners = grown(this.owners, (n) => new Int32Array(n));
      this.shares = grown(this.shares, (n) => new Float32Array(n));
    }
    this.owners.copyWithin(at + 1, at, this.to);
    this.shares.copyWithin(at + 1, at, this.to);
    this.owners[at] = owner;
    this.shares[at] = share;
    this.to++;
  }

  /** Ends the list being gathered: its number, the old one when such a list is there already. */
  close(): number {
    if (this.to === this.from) return 0;
    const hash = this.hashGathered();
    let slot = hash & (this.slots.length - 1);
    for (;;) {
      const list = (this.slots[slot] as number) - 1;
      if (list < 0) break;
      if (this.hashes[list] === hash && this.equalsGathered(list)) {
        this.to = this.from;
        return list;
      }
      slot = (slot + 1) & (this.slots.length - 1);
    }
    return this.keepGathered(slot, hash);
  }

  /** Copies of the storage, cut to length. */
  arrays(): OwnerListArrays {
    return {
      listStart: this.starts.slice(0, this.listCount + 1),
      listOwner: this.owners.slice(0, this.from),
      listShare: this.shares.slice(0, this.from),
    };
  }

  private hashGathered(): number {
    let h = 0x811c9dc5 | 0;
    for (let i = this.from; i < this.to; i++) {
      h = stir(h, this.owners[i] as number);
      h = stir(h, ((this.shares[i] as number) * 0x7fffffff) | 0);
    }
    return h ^ (h >>> 15);
  }

  private equalsGathered(list: number): boolean {
    const start = this.starts[list] as number;
    const size = this.to - this.from;
    if ((this.starts[list + 1] as number) - start !== size) return false;
    for (let i = 0; i < size; i++) {
      if (this.owners[start + i] !== this.owners[this.from + i]) return false;
      if (this.shares[start + i] !== this.shares[this.from + i]) return false;
    }
    return true;
  }

  private keepGathered(slot: number, hash: number): number {
    if (this.listCount + 2 >= this.starts.length) {
      this.starts = grown(this.starts, (n) => new Int32Array(n));
      this.hashes = grown(this.hashes, (n) => new Int32Array(n));
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
    const slots = new Int32Array(2 * this.slots.length);
    for (let list = 1; list < this.listCount; list++) {
      let slot = (this.hashes[list] as number) & (slots.length - 1);
      while (slots[slot] !== 0) slot = (slot + 1) & (slots.length - 1);
      slots[slot] = list + 1;
    }
    this.slots = slots;
  }
}
