/** A wave as it is written, direction by direction. */
import type { Receiver } from '../../geometry/surface.ts';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import type { Direction } from '../directions.ts';
import { type Numbers, numbersFor, type Wave } from '../ledger.ts';
import { OwnerLists } from './ownerLists.ts';

/** How much of a beam square on it a receiver gets: 0 behind a one-sided one, either side of a leaf counts. */
export function receiverCosine({ normal, sides }: Receiver, toSky: Vec3): number {
  const cosine = dot(normal, toSky);
  return sides === 'both' ? Math.abs(cosine) : Math.max(0, cosine);
}

interface Stances {
  readonly receiverStance: Numbers;
  readonly stances: readonly Receiver[];
}

/** Receivers of one normal and the same sides get the same cosine. */
function stancesOf(receivers: readonly Receiver[]): Stances {
  const known = new Map<string, number>();
  const stances: Receiver[] = [];
  const stance = receivers.map((receiver) => {
    const key = `${receiver.sides} ${receiver.normal.join(' ')}`;
    const number = known.get(key) ?? stances.push(receiver) - 1;
    known.set(key, number);
    return number;
  });
  const receiverStance = numbersFor(stances.length, receivers.length);
  receiverStance.set(stance);
  return { receiverStance, stances };
}

/** Lists of a wave with what they are made of. */
export type Lists = Pick<Wave, 'listStart' | 'listVeil' | 'veilOwner' | 'veilShare'>;

/** Nothing but the empty list. */
const noLists: Lists = {
  listStart: new Int32Array(2),
  listVeil: new Uint8Array(0),
  veilOwner: new Int32Array(0),
  veilShare: new Float32Array(0),
};

/** The lists of `first`, then those of `more` but its empty one. */
function joinLists(first: Lists, more: Lists): Lists {
  if (first.listStart.length === 2) return more;
  const known = new Map(Array.from(first.veilOwner, (owner, v) => [`${owner} ${first.veilShare[v]}`, v]));
  const [owners, shares] = [[...first.veilOwner], [...first.veilShare]];
  const veilAfter = Array.from(more.veilOwner, (owner, v) => {
    const share = more.veilShare[v] as number;
    const found = known.get(`${owner} ${share}`);
    if (found !== undefined) return found;
    shares.push(share);
    return owners.push(owner) - 1;
  });
  const had = first.listVeil.length;
  const listVeil = numbersFor(owners.length, had + more.listVeil.length);
  listVeil.set(first.listVeil);
  more.listVeil.forEach((veil, i) => {
    listVeil[had + i] = veilAfter[veil] as number;
  });
  const listStart = new Int32Array(first.listStart.length + more.listStart.length - 2);
  listStart.set(first.listStart);
  for (let list = 1; list + 1 < more.listStart.length; list++) {
    listStart[first.listStart.length + list - 1] = had + (more.listStart[list + 1] as number);
  }
  return { listStart, listVeil, veilOwner: Int32Array.from(owners), veilShare: Float32Array.from(shares) };
}

export class WaveRecord {
  readonly lists = new OwnerLists();
  private readonly kept: Lists;
  /** Of the direction being written, per receiver: number of its list. */
  readonly list: Int32Array;
  readonly stances: Stances;
  /** Of the direction being written, per stance. */
  readonly cosines: Float64Array;
  private readonly directions: readonly Direction[];
  private rayList: Numbers;
  private readonly rayCloudShare: Float32Array | null;
  private readonly stanceCosine: Float32Array;

  /** @param kept lists that are there already, under the numbers they have */
  constructor(
    directions: readonly Direction[],
    receivers: readonly Receiver[],
    hasClouds: boolean,
    kept: Lists = noLists,
  ) {
    this.kept = kept;
    const rays = directions.length * receivers.length;
    this.directions = directions;
    this.list = new Int32Array(receivers.length);
    this.stances = stancesOf(receivers);
    this.cosines = new Float64Array(this.stances.stances.length);
    this.rayList = new Uint8Array(rays);
    this.rayCloudShare = hasClouds ? new Float32Array(rays).fill(1) : null;
    this.stanceCosine = new Float32Array(directions.length * this.cosines.length);
  }

  /** Begins a direction: no ray has a list yet. */
  begin(d: number): void {
    const { toSky } = this.directions[d] as Direction;
    const { stances } = this.stances;
    this.list.fill(0);
    stances.forEach((receiver, s) => {
      this.cosines[s] = receiverCosine(receiver, toSky);
    });
    this.stanceCosine.set(this.cosines, d * stances.length);
  }

  /** Whether a ray of the direction brings its receiver anything if nothing is in the way. */
  isLit(receiver: number): boolean {
    return (this.cosines[this.stances.receiverStance[receiver] as number] as number) > 0;
  }

  /** Ends the list being gathered: its number. */
  close(): number {
    const list = this.lists.close();
    return list === 0 ? 0 : list + this.kept.listStart.length - 2;
  }

  /** The list of what something fixed and opaque ends. */
  closeDark(): number {
    this.lists.put(0, 0);
    return this.close();
  }

  end(d: number, cloudShare: Float64Array): void {
    const { list } = this;
    const from = d * list.length;
    const most = this.kept.listStart.length + this.lists.count - 3;
    const bytes = this.rayList.BYTES_PER_ELEMENT;
    if (bytes < 4 && most >= 1 << (8 * bytes)) {
      const wider = numbersFor(most, this.rayList.length);
      wider.set(this.rayList);
      this.rayList = wider;
    }
    this.rayList.set(list, from);
    this.rayCloudShare?.set(cloudShare, from);
  }

  wave(): Wave {
    const { directions, list, rayList, rayCloudShare, stanceCosine, stances } = this;
    return {
      directions,
      receiverCount: list.length,
      rayList,
      rayCloudShare,
      receiverStance: stances.receiverStance,
      stanceCosine,
      ...joinLists(this.kept, this.lists.veiled()),
    };
  }
}
