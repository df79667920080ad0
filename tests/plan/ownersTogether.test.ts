import { describe, expect, it } from 'vitest';
import { exposure } from '../../src/light/exposure.ts';
import type { Wave } from '../../src/light/ledger.ts';
import { exposureParts } from '../../src/light/lightParts.ts';
import { traceWave } from '../../src/light/trace/wave.ts';
import { ownersTogether } from '../../src/plan/ownersTogether.ts';
import { lightOf, waveOf } from '../light/cells.ts';
import { sceneOf } from '../light/trace/scene.ts';

const { surfaces, receivers } = sceneOf(71, {
  leaves: 47,
  stems: 19,
  triangles: 3,
  clouds: 1,
  openReceivers: 31,
});
/** As many nodes as asked, the same ones over and over. */
const sceneWith = (nodes: number) => ({
  surfaces,
  receivers: Array.from(
    { length: nodes },
    (_, i) => receivers[i % receivers.length] as (typeof receivers)[0],
  ),
  ownerCount: 9,
});

const bytes = (wave: Wave): number =>
  Object.values(wave).reduce((sum, part) => sum + (ArrayBuffer.isView(part) ? part.byteLength : 0), 0);

describe('a scene with owners together', () => {
  const directions = waveOf(71, 0).filter((_, d) => d % 9 === 4);
  const ledgerOf = (scene: ReturnType<typeof sceneWith>) => {
    const wave = traceWave({ ...scene, directions });
    return {
      ownerCount: scene.ownerCount,
      receiverCount: scene.receivers.length,
      waves: [wave],
      seed: 71,
    };
  };

  it('is the scene itself up to four thousand nodes', () => {
    const scene = sceneWith(4000);
    expect(ownersTogether(scene)).toBe(scene);
  });

  it('has the same light beyond, with its parts, in less memory, and refuses to leave owners out (seed 71)', () => {
    const scene = sceneWith(4001);
    const large = ownersTogether(scene);
    expect(large.ownerCount).toBe(2);
    expect(large.surfaces.map(({ owner }) => owner)).toEqual(surfaces.map(({ owner }) => Math.min(1, owner)));
    const [apart, together] = [ledgerOf(scene), ledgerOf(large)];
    const light = lightOf(0.2);
    const expected = exposure(apart, light);
    exposure(together, light).forEach(({ share }, r) => {
      // Single precision of shares.
      expect(Math.abs(share - (expected[r]?.share ?? Number.NaN))).toBeLessThan(1e-6);
    });
    const figures = { leafReflectance: 0.09, leafTransmittance: 0.07 };
    const parts = exposureParts(apart, light, figures);
    exposureParts(together, light, figures).forEach(({ beam, transmitted }, r) => {
      expect(Math.abs(beam - (parts[r]?.beam ?? Number.NaN))).toBeLessThan(1e-6);
      expect(Math.abs(transmitted - (parts[r]?.transmitted ?? Number.NaN))).toBeLessThan(1e-6);
    });
    expect(bytes(together.waves[0] as Wave)).toBeLessThan(bytes(apart.waves[0] as Wave));
    expect(() => exposure(together, light, undefined, new Uint8Array(9))).toThrow(/^exposure: keep/);
  });
});
