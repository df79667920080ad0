import { describe, expect, it } from 'vitest';
import { exposure } from '../../src/light/exposure.ts';
import { mergeForSearch, mergeRows } from '../../src/light/mergeForSearch.ts';
import { ledgerOf, lightOf } from './cells.ts';
import { sceneOf, stream } from './trace/scene.ts';

const size = { leaves: 43, stems: 21, triangles: 3, clouds: 1, openReceivers: 37 };
const ownerCount = 9;
const all = new Uint8Array(ownerCount).fill(1);

function tableOf(seed: number, free: Uint8Array, keep = all) {
  const { surfaces, receivers } = sceneOf(seed, size);
  const ledger = ledgerOf(surfaces, receivers, { seed, waves: 3, ownerCount });
  const light = lightOf(0.2);
  return { ledger, light, table: mergeForSearch(ledger, light, { free, keep }) };
}

describe('the search table', () => {
  it.each([21, 22, 23])('follows exposure through three hundred random toggles (seed %i)', (seed) => {
    const free = Uint8Array.from({ length: ownerCount }, (_, owner) => (owner === 0 || owner === 5 ? 0 : 1));
    const { ledger, light, table } = tableOf(seed, free);
    const draw = stream(seed);
    for (let i = 0; i < 300; i++) {
      const owner = 1 + Math.floor(8 * draw());
      if (free[owner] === 1) table.toggle(owner);
    }
    const carried = table.share.slice();
    const expected = exposure(ledger, light, undefined, table.keep);
    expect(table.keep).not.toEqual(all);
    carried.forEach((share, r) => {
      expect(Math.abs(share - (expected[r]?.share ?? Number.NaN))).toBeLessThan(1e-9);
    });
    table.reset(table.keep.slice());
    carried.forEach((share, r) =>
      expect(Math.abs(share - (table.share[r] ?? Number.NaN))).toBeLessThan(1e-12),
    );
  });

  it('folds owners that cannot be toggled, gone or standing, into the weights', () => {
    const keep = Uint8Array.from(all, (_, owner) => (owner === 3 || owner === 6 ? 0 : 1));
    const free = Uint8Array.from(all, (_, owner) => (owner === 2 ? 1 : 0));
    const { ledger, light, table } = tableOf(24, free, keep);
    expect(Array.from(all, (_, owner) => table.entriesOf(owner) > 0)).toEqual(
      Array.from(all, (_, owner) => owner === 2),
    );
    const expected = exposure(ledger, light, undefined, keep);
    table.share.forEach((share, r) => {
      expect(Math.abs(share - (expected[r]?.share ?? Number.NaN))).toBeLessThan(1e-9);
    });
  });

  it('marks the rows whose light has changed, and no others', () => {
    const { table } = tableOf(
      25,
      Uint8Array.from(all, (_, owner) => (owner === 0 ? 0 : 1)),
    );
    for (let owner = 1; owner < ownerCount; owner++) {
      const before = table.share.slice();
      table.changed.fill(0);
      table.toggle(owner);
      expect([...table.changed]).toEqual(
        Array.from(table.share, (share, r) => (share === before[r] ? 0 : 1)),
      );
      expect(table.changed).toContain(1);
    }
  });

  it('adds up receivers of several lights in one row', () => {
    const free = Uint8Array.from({ length: ownerCount }, (_, owner) => (owner === 0 ? 0 : 1));
    const { ledger, light, table } = tableOf(27, free);
    const other = sceneOf(28, size);
    const later = ledgerOf(other.surfaces, other.receivers, { seed: 28, waves: 2, ownerCount });
    const laterTable = mergeForSearch(later, light, { free, keep: all });
    const rows = mergeRows(
      [
        { ledger, light, receiver: Int32Array.of(3, -1, 11), factor: Float64Array.of(0.3, 0, 1) },
        { ledger: later, light, receiver: Int32Array.of(5, 7, -1), factor: Float64Array.of(0.7, 0.4, 0) },
      ],
      { free, keep: all },
    );
    const [one, two] = [table.share, laterTable.share];
    for (const owner of [4, 2, 7, 4]) {
      for (const each of [rows, table, laterTable]) each.toggle(owner);
      expect(rows.share[0]).toBeCloseTo(0.3 * (one[3] ?? Number.NaN) + 0.7 * (two[5] ?? Number.NaN), 9);
      expect(rows.share[1]).toBeCloseTo(0.4 * (two[7] ?? Number.NaN), 9);
      expect(rows.share[2]).toBeCloseTo(one[11] ?? Number.NaN, 9);
    }
  });

  it('starts anew from a keep-set and refuses to move what is not free', () => {
    const free = Uint8Array.from(all, (_, owner) => (owner > 4 ? 1 : 0));
    const { ledger, light, table } = tableOf(26, free);
    const keep = Uint8Array.from(all, (_, owner) => (owner === 7 ? 0 : 1));
    table.reset(keep);
    expect(table.share[11]).toBeCloseTo(exposure(ledger, light, undefined, keep)[11]?.share ?? Number.NaN, 9);
    expect(() => table.toggle(2)).toThrow('toggle: owner 2 is not free');
    expect(() => table.reset(Uint8Array.from(all, (_, owner) => (owner === 2 ? 0 : 1)))).toThrow('owner 2');
    expect(() => table.reset(new Uint8Array(3))).toThrow('reset: keep');
  });
});
