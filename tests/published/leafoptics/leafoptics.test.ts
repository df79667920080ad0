import { describe, expect, test } from 'vitest';
import { leafOptics } from '../../../src/light/leafOptics.ts';
import { figLight } from '../../../src/species/fig/light.ts';
import { checkCases } from '../checkCases.ts';
import { leafoptics } from './answers.ts';

describe('leaf optics', () => {
  checkCases(leafoptics);

  test('a leaf throws back more than its bare upper surface, 0.045 +- 0.004 (McClendon and Fukshansky 1990)', () => {
    // The surface's own part is not modelled; it can only bound the whole from below, over the whole range allowed.
    expect(figLight.leafReflectance.min).toBeGreaterThan(0.045 + 0.004);
  });

  test('among leaves a leaf passes 1 - sqrt(absorptance) (Goudriaan 1977, from memory)', () => {
    const optics = leafOptics({ leafReflectance: 0.09, leafTransmittance: 0.07 });
    expect(optics.transmittance).toBeCloseTo(0.083485, 6);
    expect(optics.reflectance).toBe(0.09);
    expect(leafOptics({ leafReflectance: 0, leafTransmittance: 0 }).transmittance).toBe(0);
    expect(() => leafOptics({ leafReflectance: 0.7, leafTransmittance: 0.5 })).toThrow(
      /^leafOptics: .*got 1.2/,
    );
  });
});
