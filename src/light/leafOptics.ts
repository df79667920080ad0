/** What leaves do with the light they meet. */
import type { Optics } from '../geometry/surface.ts';

export interface LeafFigures {
  readonly leafTransmittance: number;
  readonly leafReflectance: number;
}

/**
 * Optics of a leaf among leaves. Light that leaves scatter is not traced; it is counted by letting each leaf pass
 * 1 - sqrt(absorptance) instead of its bare transmittance, so that a canopy dims as exp(-K sqrt(absorptance) L), and never
 * less than its bare transmittance. Goudriaan 1977, Crop micrometeorology: a simulation study, Wageningen (as in Campbell
 * and Norman 1998, eq. 15.6), derived for horizontal leaves with equal reflectance and transmittance. At reflectance 0.09
 * and transmittance 0.07 that is 0.083. Dropped: where the scattered light comes from; single leaves with nothing round
 * them pass only their transmittance, which is 0.01 less of the light. Held against all orders of scattering in
 * `tests/published/leafoptics`.
 */
export function leafOptics({ leafTransmittance, leafReflectance }: LeafFigures): Optics {
  const absorptance = 1 - leafTransmittance - leafReflectance;
  if (!(absorptance >= 0 && absorptance <= 1)) {
    throw new Error(
      `leafOptics: reflectance and transmittance must be within 0 to 1 together, got ${1 - absorptance}`,
    );
  }
  const transmittance = Math.max(leafTransmittance, 1 - Math.sqrt(absorptance));
  return { transmittance, reflectance: Math.min(leafReflectance, 1 - transmittance) };
}
