import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { writeTreeFile } from '../../src/document/writeTreeFile.ts';
import { figParameters } from '../../src/species/fig.ts';
import type { Parameter } from '../../src/species/parameter.ts';
import { sampleFile, sampleIds, sampleText } from './sampleFiles.ts';

function read(text: string): TreeFile {
  const result = parseTreeFile(text);
  if (!result.ok) throw new Error(`${result.where}: ${result.reason}`);
  return result.file;
}

/** The same value with the keys of all its objects the other way round. */
function backwards(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(backwards);
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, v]) => [key, backwards(v)]),
  );
}

const seed = 20260714;
const adjustable = Object.entries(figParameters as Record<string, Parameter>).filter(([, p]) => p.adjustable);
const word = fc.string({ minLength: 1, maxLength: 30, unit: 'grapheme' }).map((s) => `A ${s}`);
const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** The bare sample with its numbers, names, settings and foreign data replaced by any that are allowed. */
const anyFile: fc.Arbitrary<TreeFile> = fc
  .record({
    name: word,
    note: fc.string({ maxLength: 200, unit: 'binary' }),
    latitudeDeg: metres(-66, 66),
    longitudeDeg: metres(-180, 180),
    at: fc.tuple(metres(-99, 99), metres(-99, 99)),
    stretch: metres(0.5, 1.9),
    thicken: metres(0.3, 2),
    names: fc.array(word, { minLength: 17, maxLength: 17 }),
    pins: fc.array(fc.constantFrom('keep' as const, 'remove' as const, null), {
      minLength: 17,
      maxLength: 17,
    }),
    settings: fc.dictionary(
      fc.constantFrom(...adjustable.map(([name]) => name)),
      fc.double({ min: 0, max: 1, noNaN: true }),
    ),
    ext: fc.option(
      fc.dictionary(
        fc.string({ maxLength: 20 }).filter((key) => key !== '__proto__'),
        fc.jsonValue({ maxDepth: 4 }),
      ),
      { nil: undefined },
    ),
  })
  .map(({ name, note, latitudeDeg, longitudeDeg, at, stretch, thicken, names, pins, settings, ext }) => {
    const file = sampleFile('potted-fig-bud-break');
    const axes = file.axes.map((axis, i) => ({
      ...axis,
      name: names[i] as string,
      pin: pins[i] ?? null,
      ...(pins[i] === null ? {} : { bearsFigs: pins[i] === 'keep' }),
      atM: axis.atM * stretch,
      path: axis.path.map(([x, y, z]): [number, number, number] => [x * stretch, y * stretch, z * stretch]),
      baseDiameterM: axis.baseDiameterM * thicken,
      tipDiameterM: axis.tipDiameterM * thicken,
      buds: axis.buds.map((bud) => ({ ...bud, atM: bud.atM * stretch })),
    }));
    const inRange = Object.entries(settings).map(([key, t]) => {
      const { min, max } = (figParameters as Record<string, Parameter>)[key] as Parameter;
      return [key, Math.min(max, min + t * (max - min))];
    });
    return {
      ...file,
      name,
      note,
      site: { ...file.site, latitudeDeg, longitudeDeg },
      standing: { ...file.standing, at },
      settings: Object.fromEntries(inRange) as Record<string, number>,
      axes,
      ...(ext === undefined ? {} : { ext: JSON.parse(JSON.stringify(ext)) as NonNullable<TreeFile['ext']> }),
    };
  });

describe('writing a tree file', () => {
  it.each(sampleIds)('gives the bytes of %s back', (id) => {
    expect(writeTreeFile(sampleFile(id))).toBe(sampleText(id));
  });

  it.each(sampleIds)('writes %s alike whatever the order of its keys', (id) => {
    expect(writeTreeFile(backwards(sampleFile(id)) as TreeFile)).toBe(sampleText(id));
  });

  it('keeps a clearness typed in, and reads none that cannot be', () => {
    const clearness = [0.29, 0.34, 0.41, 0.45, 0.48, 0.52, 0.54, 0.53, 0.47, 0.4, 0.31, 0.27] as const;
    const file = sampleFile('young-whip');
    const withClearness = (months: readonly number[]): string =>
      writeTreeFile({
        ...file,
        site: { ...file.site, climate: { ...file.site.climate, clearness: months } },
      } as TreeFile);
    expect(read(withClearness(clearness)).site.climate.clearness).toEqual(clearness);
    expect(() => read(withClearness(clearness.map((k) => 2 * k)))).toThrow(/clearness/);
    expect(() => read(withClearness(clearness.slice(1)))).toThrow(/clearness/);
  });

  it(`is a fixed point: what was written, read and written is the same text (seed ${seed})`, () => {
    fc.assert(
      fc.property(anyFile, (file) => {
        // Names and notes lose their hidden characters on the first reading.
        const clean = read(writeTreeFile(file));
        const text = writeTreeFile(clean);
        expect(writeTreeFile(read(text))).toBe(text);
        expect(read(text).axes.map((axis) => axis.path)).toEqual(clean.axes.map((axis) => axis.path));
      }),
      { seed, numRuns: 150 },
    );
  });

  it(`moves no point by more than 0.05 mm a coordinate, and no setting and nothing in ext at all (seed ${seed})`, () => {
    fc.assert(
      fc.property(anyFile, (file) => {
        const back = read(writeTreeFile(file));
        expect(JSON.stringify(back.ext)).toBe(JSON.stringify(file.ext));
        expect(back.settings).toEqual(file.settings);
        file.axes.forEach((axis, i) =>
          axis.path.flat().forEach((x, k) => {
            expect(Math.abs((back.axes[i]?.path.flat()[k] as number) - x)).toBeLessThanOrEqual(5.0001e-5);
          }),
        );
      }),
      { seed, numRuns: 60 },
    );
  });

  it('changes one line for one change', () => {
    const file = sampleFile('old-fig-in-ground');
    const axes = file.axes.map((axis) => (axis.id === 'east' ? { ...axis, baseDiameterM: 0.0912 } : axis));
    const lines = sampleText('old-fig-in-ground').split('\n');
    const changed = writeTreeFile({ ...file, axes }).split('\n');
    expect(changed).toHaveLength(lines.length);
    expect(changed.filter((line, i) => line !== lines[i])).toEqual(['      "baseDiameterM": 0.0912,']);
  });

  it('writes 0.1 mm, 0.01 degrees, and no minus before nothing', () => {
    const file = sampleFile('young-whip');
    const text = writeTreeFile({
      ...file,
      standing: { ...file.standing, at: [-0.00001, 1.23456], turnedDeg: 17.2345 },
    });
    expect(text).toContain('"at": [0, 1.2346],');
    expect(text).toContain('"turnedDeg": 17.23');
  });

  it('throws on a number that is none', () => {
    const file = sampleFile('young-whip');
    expect(() => writeTreeFile({ ...file, standing: { ...file.standing, turnedDeg: Number.NaN } })).toThrow(
      'writeTreeFile: turnedDeg must be finite, got NaN',
    );
  });
});
