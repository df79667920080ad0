/**
 * The ledger: which owners each ray passes. Traced once, it answers for any period, any weather and any
 * set of kept owners by arithmetic alone.
 */
import type { Direction } from './directions.ts';

/**
 * One wave: every receiver towards one direction of every cell. Waves are independent estimates, so
 * their mean is the answer and their spread its standard error.
 */
export interface Wave {
  readonly directions: readonly Direction[];
  readonly receiverCount: number;
  /** Ray (direction d, receiver r) passes the owners of list rayList[d * receiverCount + r]. List 0 is empty. */
  readonly rayList: Int32Array;
  /** Share of light that fixed things let through, per ray; 0 where something fixed and opaque ends it. */
  readonly rayFixedShare: Float32Array;
  /** Cosine between ray and receiver normal, per ray: 0 behind a one-sided receiver, its size for a leaf. */
  readonly rayCosine: Float32Array;
  /** List l is entries listStart[l] to listStart[l + 1] (excluded); length is the number of lists plus 1. */
  readonly listStart: Int32Array;
  /** Owners of the entries, ascending within a list, never 0. */
  readonly listOwner: Int32Array;
  /** Share of light that all surfaces of that owner on the ray let through together. */
  readonly listShare: Float32Array;
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
