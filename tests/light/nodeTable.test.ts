import { describe, expect, it } from 'vitest';
import type { CellLight } from '../../src/light/directions.ts';
import { exposure } from '../../src/light/exposure.ts';
import { leafExposureParts, measuredLeafParts } from '../../src/light/leafParts.ts';
import type { KeepSet, Ledger } from '../../src/light/ledger.ts';
import {
  exposureParts,
  type LightParts,
  measuredParts,
  partsOf,
  partsTable,
} from '../../src/light/lightParts.ts';
import { exposureOf, type Grouping, nodeTable } from '../../src/light/nodeTable.ts';
import { traceLeafWave } from '../../src/light/trace/leafWave.ts';
import { ledgerOf, lightOf, waveOf } from './cells.ts';
import { sceneOf, stream } from './trace/scene.ts';

const size = { leaves: 37, stems: 19, triangles: 3, clouds: 1, openReceivers: 29 };
const ownerCount = 9;
const figures = { leafReflectance: 0.09, leafTransmittance: 0.07 };

function ledgerWith(seed: number, waves: number): Ledger {
  const { surfaces, receivers } = sceneOf(seed, size);
  return ledgerOf(surfaces, receivers, { seed, waves, ownerCount });
}

/** Five groups and a group of none, at random, with weights. */
function someGroups(seed: number, receiverCount: number): Grouping {
  const draw = stream(seed);
  const group = Int32Array.from({ length: receiverCount }, () => Math.floor(6 * draw()) - 1);
  return { count: 6, group, weight: Float64Array.from(group, () => draw()) };
}

const someOwners = (seed: number): KeepSet => {
  const draw = stream(seed);
  return Uint8Array.from({ length: ownerCount }, (_, owner) => (owner === 0 || draw() < 0.6 ? 1 : 0));
};

/** Lights that share nothing: even and bright, beam alone, a low sky alone. */
function lights(): CellLight[] {
  const even = lightOf(0.21);
  const none = (of: Float64Array): Float64Array => new Float64Array(of.length);
  return [
    even,
    { ...even, sky: none(even.sky), openDiffuseParMolM2Day: 0, openSkyParMolM2Day: 17 },
    {
      ...even,
      beam: none(even.beam),
      sky: even.sky.map((energy, cell) => (cell < 20 ? energy : 0)),
      openBeamParMolM2Day: 0,
      openSkyParMolM2Day: 11,
    },
  ];
}

describe('a table of nodes', () => {
  it.each([61, 62, 63])('answers as the ledger does, to the last bit, in every light (seed %i)', (seed) => {
    const ledger = ledgerWith(seed, 3);
    const grouping = someGroups(seed, ledger.receiverCount);
    for (const keep of [undefined, someOwners(seed)]) {
      const table = nodeTable(ledger, grouping, keep);
      const parts = partsTable(ledger, figures, grouping, keep);
      for (const light of lights()) {
        expect(exposureOf(table, light)).toEqual(exposure(ledger, light, grouping, keep));
        expect(partsOf(parts, light)).toEqual(measuredParts(ledger, light, figures, grouping, keep));
      }
    }
  });

  it('holds by direction and group what the group gets of a beam square to a level sensor (seed 64)', () => {
    const ledger = ledgerWith(64, 2);
    const table = nodeTable(ledger);
    expect(table.groupCount).toBe(ledger.receiverCount);
    table.waves.forEach(({ directions, passed }, w) => {
      expect(directions).toBe(ledger.waves[w]?.directions);
      expect(passed).toHaveLength(directions.length * table.groupCount);
      expect(passed.every((share) => share >= 0 && share <= 1 + 1e-7)).toBe(true);
    });
  });

  it('refuses groupings and keep-sets that do not fit', () => {
    const ledger = ledgerWith(65, 1);
    expect(() => nodeTable(ledger, { count: 1, group: new Int32Array(3) })).toThrow(/^exposure: group/);
    expect(() => partsTable(ledger, figures, undefined, new Uint8Array(2))).toThrow(/^exposure: keep/);
  });
});

const names = ['beam', 'sky', 'ground', 'transmitted', 'scattered'] as const;

/** Spread of the answers of single waves, n - 1 in the denominator, over the root of n. */
function spread(alone: readonly (readonly LightParts[])[], g: number, name: keyof LightParts): number {
  const values = alone.map((groups) => groups[g]?.[name] ?? Number.NaN);
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  const squares = values.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1) / values.length);
}

describe('the error of each part of the light', () => {
  it('is the spread of the waves, on nodes and on leaves (seed 66)', () => {
    const { surfaces } = sceneOf(66, size);
    const ledger = ledgerWith(66, 4);
    const light = lightOf(0.21);
    const group = Int32Array.from(surfaces, (s, i) => (s.shape === 'blade' ? i % 3 : -1));
    const leafWaves = [0, 1, 2, 3].map((wave) => {
      const directions = waveOf(66, wave);
      return traceLeafWave({
        surfaces,
        group,
        groupCount: 3,
        directions,
        ownerCount,
        spacingM: 0.07,
        seed: 66,
        wave,
      });
    });
    const leafLedger = { ownerCount, groupCount: 3, waves: leafWaves, seed: 66 };
    const alone = ledger.waves.map((wave) => exposureParts({ ...ledger, waves: [wave] }, light, figures));
    const leafAlone = leafWaves.map((wave) =>
      leafExposureParts({ ...leafLedger, waves: [wave] }, light, figures),
    );
    const compared = [
      { measured: measuredParts(ledger, light, figures), alone },
      { measured: measuredLeafParts(leafLedger, light, figures), alone: leafAlone },
    ];
    for (const { measured, alone: waves } of compared) {
      expect(measured.some(({ standardErrors }) => standardErrors.scattered > 1e-4)).toBe(true);
      measured.forEach(({ standardErrors }, g) => {
        for (const name of names) expect(standardErrors[name]).toBeCloseTo(spread(waves, g, name), 12);
      });
    }
  });

  it('is 0 of a single wave, which cannot tell', () => {
    const [first] = measuredParts(ledgerWith(67, 1), lightOf(0.2), figures);
    expect(first?.standardErrors).toEqual({ beam: 0, sky: 0, ground: 0, transmitted: 0, scattered: 0 });
  });
});
