/** Lists of a wave carried over to another. */
import { fixedOwner } from '../../geometry/surface.ts';
import type { Wave } from '../ledger.ts';
import type { Crossings } from './crossings.ts';
import type { Lists, WaveRecord } from './waveRecord.ts';

/** Lists of a wave, some of whose owners have changed. */
export class OldLists {
  /** Per list: 1 where none of its owners has changed, so that it may be used as it is. */
  readonly isWhole: Uint8Array;
  private readonly wave: Wave;
  private readonly stays: Int32Array;
  /** Per list that is not whole: number of what is left of it, -1 while it has none. */
  private readonly rest: Int32Array;

  /** @param stays per owner before: its number after, -1 for one that has changed */
  constructor(wave: Wave, stays: Int32Array) {
    const count = wave.listStart.length - 1;
    this.wave = wave;
    this.stays = stays;
    this.isWhole = new Uint8Array(count).fill(1);
    this.rest = new Int32Array(count).fill(-1);
    const { listStart, listVeil, veilOwner } = wave;
    const isGone = Uint8Array.from(veilOwner, (owner) => ((stays[owner] as number) < 0 ? 1 : 0));
    for (let list = 0; list < count; list++) {
      const end = listStart[list + 1] as number;
      for (let i = listStart[list] as number; i < end; i++) {
        if (isGone[listVeil[i] as number] === 1) this.isWhole[list] = 0;
      }
    }
  }

  /** All lists under the numbers they have, owners under their new numbers; those that are not whole are of no use. */
  kept(): Lists {
    const { listStart, listVeil, veilOwner, veilShare } = this.wave;
    const owners = veilOwner.map((owner) => Math.max(0, this.stays[owner] as number));
    return { listStart, listVeil, veilOwner: owners, veilShare };
  }

  /** Number in the record of what is left of a list together with new crossings; slow beside a look at `isWhole`. */
  close(list: number, record: WaveRecord, crossings: Crossings, receiver: number): number {
    if (this.isDark(list)) return list;
    const hasCrossings = crossings.hasOwners(receiver);
    if (!hasCrossings && (this.rest[list] as number) >= 0) return this.rest[list] as number;
    const { listStart, listVeil, veilOwner, veilShare } = this.wave;
    for (let i = listStart[list] as number; i < (listStart[list + 1] as number); i++) {
      const veil = listVeil[i] as number;
      const owner = this.stays[veilOwner[veil] as number] as number;
      if (owner >= 0) record.lists.put(owner, veilShare[veil] as number);
    }
    if (hasCrossings) crossings.putOwners(receiver, record.lists);
    const closed = record.close();
    if (!hasCrossings) this.rest[list] = closed;
    return closed;
  }

  /** Whether the list is that of a ray which something fixed and opaque ends. */
  private isDark(list: number): boolean {
    const { listStart, listVeil, veilOwner, veilShare } = this.wave;
    const first = listVeil[listStart[list] as number] as number;
    const isEmpty = listStart[list] === listStart[list + 1];
    return !isEmpty && veilOwner[first] === fixedOwner && veilShare[first] === 0;
  }
}
