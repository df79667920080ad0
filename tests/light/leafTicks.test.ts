import { describe, expect, it } from 'vitest';
import type { LeafWave } from '../../src/light/leafLedger.ts';
import { leafTable } from '../../src/light/leafTable.ts';
import { makeLeafTicks } from '../../src/light/leafTicks.ts';
import { groundZones } from '../../src/light/thrown/groundZones.ts';
import { landingOf } from '../../src/light/thrown/landing.ts';
import { plainTickedRuns } from '../../src/light/tickedRuns.ts';
import { traceLeafWave } from '../../src/light/trace/leafWave.ts';
import { waveOf } from './cells.ts';
import { sceneOf, stream } from './trace/scene.ts';

const ownerCount = 9;
const size = { leaves: 60, stems: 20, triangles: 5, openReceivers: 0 };

/** The wave with its rays to the ground sorted by zone; how bright each is does not matter here. */
function landed(wave: LeafWave): LeafWave {
  const zones = groundZones([[0.1, 0.9, -0.2]], 0.4);
  if (zones === null) throw new Error('no zones');
  const { directions } = wave;
  const none = new Float64Array();
  const faces = { patchCount: 0, directions, received: none, reflectance: none, between: null };
  return { ...wave, landing: landingOf({ wave, traced: directions, zones, faces, firstPatch: 0 }) };
}

describe('ticking owners off and on', () => {
  it.each([
    [81, 'even'],
    [82, 'even'],
    [84, 'shaded'],
  ])('gives the table of the owners that stand, tick by tick (seed %i, %s ground)', (seed, ground) => {
    const { surfaces } = sceneOf(seed, { ...size, clouds: seed % 2 });
    const group = Int32Array.from(surfaces, ({ shape, owner }) => (shape === 'blade' ? owner % 4 : -1));
    const traced = [0, 1].map((wave) =>
      traceLeafWave({
        surfaces,
        group,
        groupCount: 4,
        ownerCount,
        directions: waveOf(seed, wave),
        spacingM: 0.06,
        seed,
        wave,
      }),
    );
    const waves = ground === 'even' ? traced : traced.map(landed);
    const zoneRows = waves.map(
      ({ landing, directions }) => (landing?.directions.length ?? 0) - directions.length,
    );
    expect(Math.max(...zoneRows) > 5).toBe(ground === 'shaded');
    const ledger = { ownerCount, groupCount: 4, waves, seed };
    const draw = stream(seed);
    const keep = Uint8Array.of(1, 1, 1, 0, 1, 1, 1, 1, 1);
    const { table, tick } = makeLeafTicks(ledger, keep);
    const plain = makeLeafTicks(ledger, keep, plainTickedRuns);
    let changed = 0;
    for (let step = 0; step < 23; step++) {
      const owner = 1 + Math.floor((ownerCount - 1) * draw());
      const stands = draw() < 0.5;
      if (keep[owner] !== Number(stands)) changed++;
      keep[owner] = Number(stands);
      tick(owner, stands);
      plain.tick(owner, stands);
      expect(table).toEqual(plain.table);
      const expected = leafTable(ledger, keep);
      table.waves.forEach(({ passed }, w) => {
        const anew = expected.waves[w]?.passed as Float64Array;
        expect(Math.max(...passed.map((value, k) => Math.abs(value - (anew[k] as number))))).toBeLessThan(
          1e-12,
        );
      });
    }
    expect(changed).toBeGreaterThan(5);
  });

  it('refuses what no cut removes and owners that are not there', () => {
    const { tick } = makeLeafTicks({
      ownerCount,
      groupCount: 1,
      waves: [
        traceLeafWave({
          surfaces: [],
          group: new Int32Array(),
          groupCount: 1,
          ownerCount,
          directions: waveOf(83, 0),
          spacingM: 0.1,
          seed: 83,
          wave: 0,
        }),
      ],
      seed: 83,
    });
    expect(() => {
      tick(0, false);
    }).toThrow('owner must be above 0 and below 9, got 0');
    expect(() => {
      tick(9, false);
    }).toThrow('got 9');
  });
});
