/**
 * The ledger: which owners each ray passes. Traced once, it answers for any period, any weather and any
 * set of kept owners by arithmetic alone.
 */
import type { Direction } from './directions.ts';

/** Whole numbers from 0 on, in 1, 2 or 4 bytes each, as the greatest of them asks. */
export type Numbers = Uint8Array | Uint16Array | Int32Array;

/** The narrowest array for whole numbers from 0 to `most`, all 0 yet. */
export function numbersFor(most: number, length: number): Numbers {
  if (most < 1 << 8) return new Uint8Array(length);
  return most < 1 << 16 ? new Uint16Array(length) : new Int32Array(length);
}

/**
 * One wave: every receiver towards one direction of every cell. Waves are independent estimates, so
 * their mean is the answer and their spread its standard error.
 *
 * Ray (direction d, receiver r) is number d * receiverCount + r. What comes along it is the product of the cosine, the share
 * of its list and its clouds' share. Equal lists are kept once, and so are equal entries of lists (veils: what one owner puts in
 * the way). Bytes: 1 to 4 a ray (8 with clouds), 1 to 4 an entry of a list, 4 a list.
 */
export interface Wave {
  readonly directions: readonly Direction[];
  readonly receiverCount: number;
  /** List of each ray. List 0 is empty. */
  readonly rayList: Numbers;
  /** Per ray: share of light that fixed clouds (neighbours' crowns) let through; null where there are none. */
  readonly rayCloudShare: Float32Array | null;
  /** Receivers that look the same way are of one stance: normal and sides alike. */
  readonly receiverStance: Numbers;
  /**
   * Entry d * (number of stances) + s: cosine between ray and normal, 0 behind a one-sided receiver, its size for a leaf.
   */
  readonly stanceCosine: Float32Array;
  /** List l is entries listStart[l] to listStart[l + 1] (excluded) of listVeil; length is the number of lists plus 1. */
  readonly listStart: Int32Array;
  /** Veils of each list, their owners ascending and each at most once. */
  readonly listVeil: Numbers;
  /** Owner of each veil; 0 is what stays for good. */
  readonly veilOwner: Int32Array;
  /** Share of light that all surfaces of that owner on the ray let through together. */
  readonly veilShare: Float32Array;
}

export interface Ledger {
  readonly ownerCount: number;
  readonly receiverCount: number;
  readonly waves: readonly Wave[];
  readonly seed: number;
}

/** Which owners still stand: entry per owner, 1 kept, 0 gone. Owner 0 always stands. */
export type KeepSet = Uint8Array;

/** Light on one receiver or group of receivers. */
export interface Exposure {
  /** Share of what a level sensor under open sky gets. */
  readonly share: number;
  /** Of the sampling, in the same unit as the share. */
  readonly standardError: number;
  /** Its beam and diffuse (sky and ground) parts; they add up to the share. */
  readonly beamShare: number;
  readonly diffuseShare: number;
}
