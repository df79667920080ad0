/** Lists of a wave carried over to another. */
import { fixedOwner } from '../../geometry/surface.ts';
import type { Wave } from '../ledger.ts';
import type { Crossings } from './crossings.ts';
import type { WaveRecord } from './waveRecord.ts';

/** The old wave's lists, in the numbers of the new one. */
export class OldLists {
  /** Per list before: its number in the new wave where none of its owners has changed and it was met already; else -1. */
  readonly after: Int32Array;
  private readonly wave: Wave;
  private readonly record: WaveRecord;
  private readonly stays: Int32Array;
  /** Per veil before: its number in the new wave, -1 while it has none, -2 where its owner has changed. */
  private readonly veilAfter: Int32Array;
  /** Whether the owners that stay are numbered in the order they were. */
  private readonly isInOrder: boolean;

  /** @param stays per owner before: its number after, -1 for one that has changed */
  constructor(wave: Wave, stays: Int32Array, record: WaveRecord) {
    this.wave = wave;
    this.record = record;
    this.stays = stays;
    this.after = new Int32Array(wave.listStart.length - 1).fill(-1);
    this.veilAfter = Int32Array.from(wave.veilOwner, (owner) => ((stays[owner] as number) < 0 ? -2 : -1));
    const left = stays.filter((owner) => owner >= 0);
    this.isInOrder = left.every((owner, i) => i === 0 || owner > (left[i - 1] as number));
  }

  /** Number in the record of what is left of a list together with new crossings; slow beside a look into `after`. */
  close(list: number, crossings: Crossings, receiver: number): number {
    const hasCrossings = crossings.hasOwners(receiver) && !this.isDark(list);
    const isWhole = !hasCrossings && this.isWhole(list);
    const closed =
      isWhole && this.isInOrder ? this.closeWhole(list) : this.closeRest(list, crossings, receiver);
    if (isWhole) this.after[list] = closed;
    return closed;
  }

  /** Whether the list is that of a ray which something fixed and opaque ends. */
  private isDark(list: number): boolean {
    const { listStart, listVeil, veilOwner, veilShare } = this.wave;
    const first = listVeil[listStart[list] as number] as number;
    const isEmpty = listStart[list] === listStart[list + 1];
    return !isEmpty && veilOwner[first] === fixedOwner && veilShare[first] === 0;
  }

  /** Whether none of its owners has changed. */
  private isWhole(list: number): boolean {
    const { listStart, listVeil } = this.wave;
    const end = listStart[list + 1] as number;
    for (let i = listStart[list] as number; i < end; i++) {
      if (this.veilAfter[listVeil[i] as number] === -2) return false;
    }
    return true;
  }

  private closeWhole(list: number): number {
    const { listStart, listVeil, veilOwner, veilShare } = this.wave;
    const { lists } = this.record;
    const [start, end] = [listStart[list] as number, listStart[list + 1] as number];
    for (let i = start; i < end; i++) {
      const veil = listVeil[i] as number;
      if ((this.veilAfter[veil] as number) >= 0) continue;
      const owner = this.stays[veilOwner[veil] as number] as number;
      this.veilAfter[veil] = lists.veilOf(owner, veilShare[veil] as number);
    }
    return lists.closeVeils(listVeil, start, end, this.veilAfter);
  }

  private closeRest(list: number, crossings: Crossings, receiver: number): number {
    const { listStart, listVeil, veilOwner, veilShare } = this.wave;
    const { lists } = this.record;
    const isDark = this.isDark(list);
    for (let i = listStart[list] as number; i < (listStart[list + 1] as number); i++) {
      const veil = listVeil[i] as number;
      const owner = this.stays[veilOwner[veil] as number] as number;
      if (owner >= 0) lists.put(owner, veilShare[veil] as number);
    }
    if (!isDark) crossings.putOwners(receiver, lists);
    return lists.close();
  }
}
