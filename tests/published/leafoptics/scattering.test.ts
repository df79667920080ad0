import { describe, expect, test } from 'vitest';
import { leafOptics } from '../../../src/light/leafOptics.ts';
import { gaussPoints, type Slab, solve } from './addingDoubling.ts';

const fig = { reflectance: 0.09, transmittance: 0.07 };
const published = { reflectance: 0.1, transmittance: 0.1 };
const points = gaussPoints(64);

/**
 * What the model lets through an endless slab of small leaves at random: the share met by no leaf, with leaves that pass
 * some. The tracer itself is held to this law within 0.003 (`canopy/canopy.test.ts`).
 */
function modelled({ pose, leafAreaIndex, beamCosine, ...leaf }: Slab): number {
  const { reflectance: leafReflectance, transmittance: leafTransmittance } = leaf;
  const dims = 1 - leafOptics({ leafReflectance, leafTransmittance }).transmittance;
  const passes = (cosine: number): number =>
    Math.exp(-dims * (pose === 'level' ? 1 : 0.5 / cosine) * leafAreaIndex);
  if (beamCosine !== null) return passes(beamCosine);
  return points.reduce((sum, { x, weight }) => sum + 2 * x * weight * passes(x), 0);
}

/** Model less truth over leaf area index 1, 2 and 4, share of what enters. */
const errors = (slab: Omit<Slab, 'leafAreaIndex'>): number[] =>
  [1, 2, 4].map((leafAreaIndex) => {
    const whole = { ...slab, leafAreaIndex };
    return modelled(whole) - solve(whole).under;
  });

describe('the solver by adding and doubling', () => {
  test.each([
    [0.1, 0.1, 1],
    [0.09, 0.07, 2],
    [0.31, 0.17, 3.3],
  ])(
    'agrees with the two-stream equations, which are exact for level leaves (R %f, T %f, L %f)',
    (r, t, l) => {
      // dI/dL = -(1 - t) I + r J and back, black ground: Ross 1981; the solver's thin layers leave 1e-5.
      const dims = Math.sqrt((1 - t) ** 2 - r ** 2);
      const under = dims / (dims * Math.cosh(dims * l) + (1 - t) * Math.sinh(dims * l));
      for (const beamCosine of [null, 0.37]) {
        const slab = {
          pose: 'level',
          leafAreaIndex: l,
          reflectance: r,
          transmittance: t,
          beamCosine,
        } as const;
        expect(Math.abs(solve(slab).under - under)).toBeLessThan(3e-5);
      }
    },
  );

  test.each(['level', 'spherical'] as const)('loses no light among %s leaves that absorb none', (pose) => {
    const slab = {
      pose,
      leafAreaIndex: 1.7,
      reflectance: 0.2,
      transmittance: 0.8,
      beamCosine: 0.57,
    } as const;
    const { under, thrownBack } = solve(slab);
    expect(Math.abs(under + thrownBack - 1)).toBeLessThan(1e-6);
    expect(thrownBack).toBeGreaterThan(0.05);
  });

  test('passes an even sky through black spherical leaves by 2 E3(L / 2)', () => {
    // Abramowitz & Stegun 1964, table 5.4: E3(0.5) = 0.2216044, E3(1) = 0.1096920.
    const black = { pose: 'spherical', reflectance: 0, transmittance: 0, beamCosine: null } as const;
    expect(solve({ ...black, leafAreaIndex: 1 }).under).toBeCloseTo(2 * 0.2216044, 4);
    expect(solve({ ...black, leafAreaIndex: 2 }).under).toBeCloseTo(2 * 0.109692, 4);
  });
});

describe('scattering by the effective share that leaves pass', () => {
  test('black leaves understate PAR by 1.11, 1.23 and 1.52 at L 1, 2, 4 (level, R = T = 0.1; Goudriaan 1977, from memory)', () => {
    [1, 2, 4].forEach((leafAreaIndex, i) => {
      const slab = { pose: 'level', leafAreaIndex, ...published, beamCosine: null } as const;
      const black = Math.exp(-leafAreaIndex);
      const factor = [1.11, 1.23, 1.52][i] ?? Number.NaN;
      // The published factors have two decimals and stand for leaves below as well.
      expect(Math.abs(solve(slab).within / black - factor)).toBeLessThan(0.01);
      expect(Math.abs(modelled(slab) / black - factor)).toBeLessThan(0.01);
    });
  });

  // Each bound is the error found, rounded up; it is what docs/model.md states.
  test.each([
    ['level', null, 0.005],
    ['spherical', null, 0.002],
    ['spherical', 0.9, 0.009],
    ['spherical', 0.6, 0.003],
    ['spherical', 0.3, 0.017],
  ] as const)(
    'is within its stated error of all orders of scattering (%s leaves, beam %s, %f)',
    (pose, beamCosine, bound) => {
      for (const error of errors({ pose, ...fig, beamCosine })) expect(Math.abs(error)).toBeLessThan(bound);
    },
  );

  test('is nearer than black leaves, for every pose and beam', () => {
    for (const pose of ['level', 'spherical'] as const) {
      for (const beamCosine of [null, 0.9, 0.6, 0.3]) {
        const slab = { pose, leafAreaIndex: 2, ...fig, beamCosine } as const;
        const truth = solve(slab).under;
        const black = modelled({ ...slab, reflectance: 0, transmittance: 0 });
        expect(truth - black).toBeGreaterThan(0.02);
        expect(Math.abs(modelled(slab) - truth)).toBeLessThan(0.6 * (truth - black));
      }
    }
  });

  test('drops from the light on ground of 0.25 what leaves throw back at it: 0.015 of it at most', () => {
    for (const pose of ['level', 'spherical'] as const) {
      for (const leafAreaIndex of [1, 2, 4]) {
        const slab = { pose, leafAreaIndex, ...fig, beamCosine: null } as const;
        const { under, thrownBack } = solve(slab);
        // Between ground and slab light goes to and fro: under (1 + r R + ...), R what the slab throws back of an even sky.
        const truth = under / (1 - 0.25 * thrownBack);
        expect(1 - under / truth).toBeLessThan(0.015);
        expect(1 - under / truth).toBeGreaterThan(0.002);
      }
    }
  });

  test('never passes less than the bare leaf does', () => {
    expect(leafOptics({ leafReflectance: 0.05, leafTransmittance: 0.1 }).transmittance).toBe(0.1);
  });
});
