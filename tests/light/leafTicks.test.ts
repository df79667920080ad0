import { describe, expect, it } from 'vitest';
import { leafTable } from '../../src/light/leafTable.ts';
import { makeLeafTicks } from '../../src/light/leafTicks.ts';
import { traceLeafWave } from '../../src/light/trace/leafWave.ts';
import { waveOf } from './cells.ts';
import { sceneOf, stream } from './trace/scene.ts';

const ownerCount = 9;
const size = { leaves: 60, stems: 20, triangles: 5, openReceivers: 0 };

describe('ticking owners off and on', () => {
  it.each([81, 82])('gives the table of the owners that stand, tick by tick (seed %i)', (seed) => {
    const { surfaces } = sceneOf(seed, { ...size, clouds: seed % 2 });
    const group = Int32Array.from(surfaces, ({ shape, owner }) => (shape === 'blade' ? owner % 4 : -1));
    const waves = [0, 1].map((wave) =>
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
    const ledger = { ownerCount, groupCount: 4, waves, seed };
    const draw = stream(seed);
    const keep = Uint8Array.of(1, 1, 1, 0, 1, 1, 1, 1, 1);
    const { table, tick } = makeLeafTicks(ledger, keep);
    let changed = 0;
    for (let step = 0; step < 23; step++) {
      const owner = 1 + Math.floor((ownerCount - 1) * draw());
      const stands = draw() < 0.5;
      if (keep[owner] !== Number(stands)) changed++;
      keep[owner] = Number(stands);
      tick(owner, stands);
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
