/** The crossings of one direction, gathered by receiver. */
import { fixedOwner, type Surface } from '../../geometry/surface.ts';
import type { Crossing } from '../tracer.ts';
import type { OwnerLists } from './ownerLists.ts';

/** A cloud that stays for good: its share differs from ray to ray, so it is kept by ray and not in a list. */
export const isFixedCloud = ({ shape, owner }: Surface): boolean => shape === 'cloud' && owner === fixedOwner;

/** What a surface's crossings count for: its owner, or this for a fixed cloud. */
const inCloud = -1;

/** Crossings by owner, chained by receiver; what fixed things and fixed clouds let through, by receiver. */
export class Crossings {
  /** Share that fixed clouds let through. */
  readonly cloudShare: Float64Array;
  /** Share that all else that is fixed lets through. */
  readonly fixedShare: Float64Array;
  private readonly surfaceOwner: Int32Array;
  private owner = new Int32Array(1024);
  private share = new Float64Array(1024);
  /** Next crossing of the same receiver; -1 ends the chain. */
  private next = new Int32Array(1024);
  private readonly first: Int32Array;
  private count = 0;
  /** Receivers for which something that can go was crossed, each once, in no order; only the first `crossedCount` count. */
  readonly crossed: Int32Array;
  crossedCount = 0;

  constructor(surfaces: readonly Surface[], receiverCount: number) {
    this.surfaceOwner = Int32Array.from(surfaces, (s) => (isFixedCloud(s) ? inCloud : s.owner));
    this.cloudShare = new Float64Array(receiverCount);
    this.fixedShare = new Float64Array(receiverCount);
    this.first = new Int32Array(receiverCount);
    this.crossed = new Int32Array(receiverCount);
    this.clear();
  }

  clear(): void {
    this.cloudShare.fill(1);
    this.fixedShare.fill(1);
    this.first.fill(-1);
    this.count = 0;
    this.crossedCount = 0;
  }

  /** To be handed to a tracer. */
  readonly add: Crossing = (receiver, surface, passedShare) => {
    const owner = this.surfaceOwner[surface] as number;
    if (owner <= fixedOwner) {
      const shares = owner === fixedOwner ? this.fixedShare : this.cloudShare;
      shares[receiver] = (shares[receiver] as number) * passedShare;
      return;
    }
    if (this.count === this.owner.length) this.grow();
    const at = this.count++;
    if ((this.first[receiver] as number) < 0) this.crossed[this.crossedCount++] = receiver;
    this.owner[at] = owner;
    this.share[at] = passedShare;
    this.next[at] = this.first[receiver] as number;
    this.first[receiver] = at;
  };

  /** Whether something that can go was crossed. */
  hasOwners(receiver: number): boolean {
    return (this.first[receiver] as number) >= 0;
  }

  /** Puts what can go into the list being gathered. */
  putOwners(receiver: number, lists: OwnerLists): void {
    for (let at = this.first[receiver] as number; at >= 0; at = this.next[at] as number) {
      lists.put(this.owner[at] as number, this.share[at] as number);
    }
  }

  private grow(): void {
    const { owner, share, next } = this;
    this.owner = new Int32Array(2 * owner.length);
    this.share = new Float64Array(2 * owner.length);
    this.next = new Int32Array(2 * owner.length);
    this.owner.set(owner);
    this.share.set(share);
    this.next.set(next);
  }
}
