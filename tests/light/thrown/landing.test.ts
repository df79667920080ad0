import { describe, expect, it } from 'vitest';
import type { Blade } from '../../../src/geometry/surface.ts';
import { leafExposure } from '../../../src/light/leafExposure.ts';
import { leafExposureParts } from '../../../src/light/leafParts.ts';
import { cellLight } from '../../../src/light/sky/cellLight.ts';
import { groundZones, zoneAt, zonePatches } from '../../../src/light/thrown/groundZones.ts';
import { lastOf } from '../../../src/light/trace/wave.ts';
import type { CanopyScene } from '../../../src/plan/canopyScene.ts';
import { waveSteps } from '../../../src/plan/canopyWave.ts';
import { northern } from '../../season/places.ts';

const leaf = (heightM: number, sideM: number): Blade => ({
  shape: 'blade',
  owner: 1,
  optics: { transmittance: 0, reflectance: 0 },
  origin: [0.2, heightM, -0.4],
  along: [sideM, 0, 0],
  across: [0, 0, sideM],
  outline: [
    [-0.5, -0.5],
    [0.5, -0.5],
    [0.5, 0.5],
    [-0.5, 0.5],
  ],
});

const zones = groundZones([[0.2, 1.3, -0.4]], 0.35);
const sceneOf = (ground: CanopyScene['ground'], shade: readonly Blade[] = []): CanopyScene => ({
  surfaces: [leaf(1.3, 0.7), ...shade],
  receivers: [],
  group: Int32Array.from([0, ...shade.map(() => -1)]),
  ownerCount: 2,
  leafCount: 1,
  leafAreaM2: 0.02,
  fixedByPose: null,
  throwing: null,
  ground,
  latitudeDeg: 44,
  seed: 131,
});

function ledgerOf(scene: CanopyScene) {
  const waves = Array.from({ length: 6 }, (_, wave) => lastOf(waveSteps({ at: 'leaves', scene, wave })));
  return { ownerCount: 2, groupCount: 1, waves, seed: 131 };
}
const figures = { leafReflectance: 0.09, leafTransmittance: 0.07 };
const light = cellLight({
  site: northern,
  groundReflectance: 0.3,
  period: { from: '2025-07-01', to: '2025-07-31' },
  skyKind: 'uniform',
});

describe('zones of the ground', () => {
  it('cover a square round the crown, each place once', () => {
    if (zones === null) throw new Error('no zones');
    for (const [number, { corner, along, across }] of zonePatches(zones).entries()) {
      const [x, z] = [corner[0] + 0.37 * along[0], corner[2] + 0.71 * across[2]];
      expect(zoneAt(zones, x, z)).toBe(number);
    }
    expect(zoneAt(zones, 0.2 + 0.35 + 1.65 + 0.01, -0.4)).toBe(-1);
    expect(zoneAt(zones, 0.2, -0.4 - 0.35 - 1.65 - 0.01)).toBe(-1);
  });

  it('are none where nothing stands above the ground', () => {
    expect(groundZones([], 0.4)).toBeNull();
  });
});

describe('light from shaded ground', () => {
  const even = ledgerOf(sceneOf(null));
  const landed = ledgerOf(sceneOf(zones));

  it('is a little less below a small leaf than from open ground; the sun stays as it was', () => {
    const [flat, shaded] = [leafExposure(even, light)[0], leafExposure(landed, light)[0]];
    if (!flat || !shaded) throw new Error('no leaf');
    expect(shaded.beamShare).toBe(flat.beamShare);
    expect(flat.diffuseShare - shaded.diffuseShare).toBeGreaterThan(0.003);
    expect(flat.diffuseShare - shaded.diffuseShare).toBeLessThan(0.05);
  });

  it('counts in the ground part alone, and parts still add up', () => {
    const [flat, shaded] = [
      leafExposureParts(even, light, figures)[0],
      leafExposureParts(landed, light, figures)[0],
    ];
    if (!flat || !shaded) throw new Error('no leaf');
    expect(shaded.sky).toBeCloseTo(flat.sky, 12);
    expect(shaded.ground).toBeLessThan(flat.ground);
    const sum = shaded.beam + shaded.sky + shaded.ground + shaded.transmitted + shaded.scattered;
    expect(sum).toBeCloseTo(leafExposure(landed, light)[0]?.share ?? Number.NaN, 12);
  });

  it('goes down further with something else above the ground', () => {
    const roof = { ...leaf(0.9, 3), origin: [0.2, 1.9, -0.4] as const };
    const below = (ground: CanopyScene['ground']) =>
      leafExposureParts(ledgerOf(sceneOf(ground, [roof])), light, figures)[0]?.ground ?? Number.NaN;
    expect(below(zones)).toBeLessThan(0.85 * below(null));
  });
});
