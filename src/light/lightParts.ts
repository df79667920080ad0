/** The light on sensors and on leaves, taken apart by the way it came. */
import type { CellKind, CellLight } from './directions.ts';
import { checkSizes, eachReceiver, type Grouping, listShares, normalWeights } from './exposure.ts';
import { checkLeaves, kindShares } from './leafExposure.ts';
import type { LeafLedger, LeafWave } from './leafLedger.ts';
import { type LeafFigures, leafOptics } from './leafOptics.ts';
import type { KeepSet, Ledger, Wave } from './ledger.ts';
import { rayWeights, type WaveWeights } from './rayWeights.ts';

/** Parts of an exposure, each a share of what a level sensor under open sky gets; they add up to its `share`. */
export interface LightParts {
  /** Straight from the sun, through no leaf of the tree. */
  readonly beam: number;
  /** Straight from the sky, and from where no ray met the sun (`rayWeights`). */
  readonly sky: number;
  /** Straight from the ground. */
  readonly ground: number;
  /** From all three, through one leaf or more. */
  readonly transmitted: number;
  /** Thrown on by leaves. */
  readonly scattered: number;
}

/** Sums of the parts, per group. */
class PartSums {
  private readonly straight: Readonly<Record<CellKind, Float64Array>>;
  private readonly transmitted: Float64Array;
  private readonly scattered: Float64Array;
  private readonly exponent: number;

  /**
   * n leaves pass p^n of the light, t^n of it straight through, t being the bare transmittance: that is p^n to the power of
   * ln t / ln p, whatever n.
   */
  constructor(count: number, figures: LeafFigures) {
    const passed = leafOptics(figures).transmittance;
    this.exponent = passed > 0 && passed < 1 ? Math.log(figures.leafTransmittance) / Math.log(passed) : 1;
    const sums = (): Float64Array => new Float64Array(count);
    this.straight = { beam: sums(), sky: sums(), ground: sums() };
    this.transmitted = sums();
    this.scattered = sums();
  }

  /** Share of what leaves pass on that went straight through them. */
  unbentShare(passed: number): number {
    return passed > 0 && passed < 1 ? Math.min(1, passed ** (this.exponent - 1)) : 1;
  }

  /** @param passed share of the light that the leaves before it let through; 1 where there are none */
  add(kind: CellKind, group: number, light: number, passed: number, unbentShare: number): void {
    if (passed === 1) {
      this.straight[kind][group] = (this.straight[kind][group] as number) + light;
      return;
    }
    const unbent = light * unbentShare;
    this.transmitted[group] = (this.transmitted[group] as number) + unbent;
    this.scattered[group] = (this.scattered[group] as number) + (light - unbent);
  }

  means(waveCount: number): readonly LightParts[] {
    const { straight, transmitted, scattered } = this;
    return Array.from(transmitted, (value, g) => ({
      beam: (straight.beam[g] as number) / waveCount,
      sky: (straight.sky[g] as number) / waveCount,
      ground: (straight.ground[g] as number) / waveCount,
      transmitted: value / waveCount,
      scattered: (scattered[g] as number) / waveCount,
    }));
  }
}

function addWave(wave: Wave, { weight }: WaveWeights, grouping: Grouping, sums: PartSums, keep?: KeepSet) {
  const { receiverCount, rayList, rayFixedShare, rayCosine } = wave;
  const receiverWeight = normalWeights(grouping);
  const shares = listShares(wave, keep);
  const unbent = shares.map((passed) => sums.unbentShare(passed));
  for (const [d, { kind }] of wave.directions.entries()) {
    const directionWeight = weight[d] as number;
    if (directionWeight === 0) continue;
    for (let r = 0; r < receiverCount; r++) {
      const g = grouping.group[r] as number;
      if (g < 0) continue;
      const ray = d * receiverCount + r;
      const list = rayList[ray] as number;
      const passed = shares[list] as number;
      const reaching = (rayCosine[ray] as number) * (rayFixedShare[ray] as number) * passed;
      const light = directionWeight * reaching * (receiverWeight[r] as number);
      sums.add(kind, g, light, passed, unbent[list] as number);
    }
  }
}

/**
 * Parts of `exposure`, with the same arguments, for a canopy whose leaves have the optics of `leafOptics(figures)`.
 * A neighbour's crown, a cloud with light in its gaps alone, counts as no leaf.
 */
export function exposureParts(
  ledger: Ledger,
  light: CellLight,
  figures: LeafFigures,
  grouping: Grouping = eachReceiver(ledger.receiverCount),
  keep?: KeepSet,
): readonly LightParts[] {
  checkSizes(ledger, grouping, keep);
  const sums = new PartSums(grouping.count, figures);
  rayWeights(ledger, light).forEach((weights, w) => {
    addWave(ledger.waves[w] as Wave, weights, grouping, sums, keep);
  });
  return sums.means(ledger.waves.length);
}

function addLeafWave(wave: LeafWave, { weight }: WaveWeights, sums: PartSums, keep?: KeepSet): void {
  const { directions, hitKind, hitShare, hitStart, kindGroup, groupAreaM2, rayAreaM2 } = wave;
  const shares = kindShares(wave, keep);
  const unbentShares = shares.map((share) => sums.unbentShare(share));
  for (const [d, direction] of directions.entries()) {
    const rayLight = (weight[d] as number) * rayAreaM2;
    if (rayLight === 0) continue;
    let [passed, unbent] = [1, 1];
    for (let k = hitStart[d] as number; k < (hitStart[d + 1] as number); k++) {
      const marked = hitKind[k] as number;
      const kind = marked < 0 ? ~marked : marked;
      if (marked < 0) {
        passed = 1;
        unbent = 1;
      }
      const group = kindGroup[kind] as number;
      if (group >= 0 && passed > 0) {
        const light = (rayLight * passed * (hitShare?.[k] ?? 1)) / (groupAreaM2[group] as number);
        sums.add(direction.kind, group, light, passed, unbent);
      }
      passed *= shares[kind] as number;
      unbent *= unbentShares[kind] as number;
    }
  }
}

/** Parts of `leafExposure`, as `exposureParts` takes those of `exposure`. */
export function leafExposureParts(
  ledger: LeafLedger,
  light: CellLight,
  figures: LeafFigures,
  keep?: KeepSet,
): readonly LightParts[] {
  checkLeaves(ledger, keep);
  const sums = new PartSums(ledger.groupCount, figures);
  rayWeights(ledger, light).forEach((weights, w) => {
    addLeafWave(ledger.waves[w] as LeafWave, weights, sums, keep);
  });
  return sums.means(ledger.waves.length);
}
