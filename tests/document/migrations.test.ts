import { describe, expect, it } from 'vitest';
import { type Migration, migrate, migrations, oldestVersion } from '../../src/document/migrations.ts';
import { currentVersion } from '../../src/document/treeFile.ts';

// Made up for these tests: no such versions were ever released.
const steps: readonly Migration[] = [
  {
    name: 'lengths from centimetres',
    from: 0,
    apply: (f) => ({ ...f, heightM: (f['heightCm'] as number) / 100 }),
  },
  { name: 'a note for every tree', from: 1, apply: (f) => ({ ...f, note: `was ${f['version'] as number}` }) },
];

describe('bringing older files up', () => {
  it('takes the steps in order, each on the result of the one before', () => {
    const old = Object.freeze({ version: 0, heightCm: 187 });
    expect(migrate(old, 0, 2, steps)).toEqual({
      file: { version: 2, heightCm: 187, heightM: 1.87, note: 'was 1' },
      taken: ['lengths from centimetres', 'a note for every tree'],
    });
  });

  it('takes only the steps that are needed, and none for a current file', () => {
    expect(migrate({ version: 1 }, 1, 2, steps).taken).toEqual(['a note for every tree']);
    const current = { version: 2 };
    expect(migrate(current, 2, 2, steps).file).toBe(current);
  });

  it('throws when a step is missing, whatever the order of the list', () => {
    expect(() => migrate({ version: 0 }, 0, 2, [steps[1] as Migration])).toThrow(
      /no step leads from version 0/,
    );
    expect(oldestVersion(2, [...steps].reverse())).toBe(0);
    expect(oldestVersion(2, [steps[1] as Migration])).toBe(1);
  });

  it('has an unbroken list up to the current version', () => {
    expect(currentVersion - oldestVersion(currentVersion)).toBe(migrations.length);
  });
});
