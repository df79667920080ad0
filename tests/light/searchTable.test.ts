import { describe, expect, it } from 'vitest';
import { exposure } from '../../src/light/exposure.ts';
import { mergeForSearch } from '../../src/light/searchTable.ts';
import { ledgerOf, lightOf } from './cells.ts';
import { sceneOf, stream } from './trace/scene.ts';

const size = { leaves: 43, stems: 21, triangles: 3, clouds: 1, openReceivers: 37 };
const ownerCount = 9;
const all = new Uint8Array(ownerCount).fill(1);

function tableOf(seed: number, free: Uint8Array, keep = all) {
  const { surfaces, receivers } = sceneOf(seed, size);
  const ledger = ledgerOf(surfaces, receivers, { seed, waves: 3, ownerCount });
  const light = lightOf(0.2);
  return { ledger, light, table: mergeForSearch(ledger, light, { free, keep, receiverCount: 37 }) };
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
      expect(Math.abs(share - table.shareOf(r))).toBeLessThan(1e-12);
    });
  });

  it('folds owners that cannot be toggled, gone or standing, into the weights', () => {
    const keep = Uint8Array.from(all, (_, owner) => (owner === 3 || owner === 6 ? 0 : 1));
    const free = Uint8Array.from(all, (_, owner) => (owner === 2 ? 1 : 0));
    const { ledger, light, table } = tableOf(24, free, keep);
    for (let list = 0; list + 1 < table.lists.listStart.length; list++) {
      expect((table.lists.listStart[list + 1] ?? 0) - (table.lists.listStart[list] ?? 0)).toBeLessThanOrEqual(
        1,
      );
    }
    const expected = exposure(ledger, light, undefined, keep);
    table.share.forEach((share, r) => {
      expect(Math.abs(share - (expected[r]?.share ?? Number.NaN))).toBeLessThan(1e-9);
    });
  });

  it('touches only lists that hold the owner', () => {
    const { table } = tableOf(
      25,
      Uint8Array.from(all, (_, owner) => (owner === 0 ? 0 : 1)),
    );
    const { listStart, listOwner } = table.lists;
    for (let owner = 1; owner < ownerCount; owner++) {
      const expected = [];
      for (let list = 0; list + 1 < listStart.length; list++) {
        if (listOwner.subarray(listStart[list], listStart[list + 1]).includes(owner)) expected.push(list);
      }
      expect([...table.listsOf(owner)]).toEqual(expected);
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
