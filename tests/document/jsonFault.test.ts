import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findJsonFault } from '../../src/document/jsonFault.ts';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { sampleText } from './sampleFiles.ts';

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

const seed = 20260731;
const signs = fc.constantFrom(
  ...Array.from('{}[]:,"\\ \n\t0-1.eEtnull/\u0007é'),
  'NaN',
  'true',
  '\\u00e9',
  '\\x',
  '01',
  '1.',
);

describe('the place where a text stops being JSON', () => {
  it.each([
    ['{"a": NaN}', 6],
    ['[1, 2,]', 6],
    ['{"a": 1 "b": 2}', 8],
    ["{'a': 1}", 1],
    ['{"a": 1, // two\n"b": 2}', 9],
    ['{"a": True}', 6],
    ['[01]', 1],
    ['["a\nb"]', 1],
    ['{"a": 1}}', 8],
    ['[1}', 2],
    ['{"a" 1}', 5],
    ['["\\x41"]', 1],
  ])('%j: at %i', (text, at) => {
    expect(isJson(text)).toBe(false);
    expect(findJsonFault(text)).toEqual({ at, unfinished: false });
  });

  it.each(['{"a": [1, 2', '{"a', '["a\\', '[1, -', '[tru', '{"a":', '['])('%j stops too early', (text) => {
    expect(findJsonFault(text)).toEqual({ at: text.length, unfinished: true });
  });

  it(`is found exactly when the runtime refuses the text (seed ${seed})`, () => {
    const edited = fc
      .tuple(fc.json({ maxDepth: 4 }), fc.nat(), fc.nat(3), fc.array(signs, { maxLength: 2 }))
      .map(([text, place, taken, put]) => {
        const at = place % (text.length + 1);
        return text.slice(0, at) + put.join('') + text.slice(at + taken);
      });
    fc.assert(
      fc.property(edited, (text) => {
        expect(findJsonFault(text) === null).toBe(isJson(text));
      }),
      { seed, numRuns: 3000 },
    );
  });

  it('is found in a text of millions of characters without end', () => {
    const long = `["${'a\\n'.repeat(1_500_000)}`;
    const before = performance.now();
    expect(findJsonFault(`${long}\n"]`)).toEqual({ at: 1, unfinished: false });
    expect(findJsonFault(long)).toEqual({ at: long.length, unfinished: true });
    expect(performance.now() - before).toBeLessThan(2000);
  });

  it('is told by line and character, also for a missing quote in the middle of a file', () => {
    const sample = sampleText('young-whip');
    const nan = parseTreeFile(sample.replace('"latitudeDeg": -41.27', '"latitudeDeg": NaN'));
    expect(nan).toMatchObject({ ok: false, where: expect.stringMatching(/^line \d+, character 20$/) });
    const line = sample.split('\n').findIndex((text) => text.includes('"timeZone"')) + 1;
    expect(parseTreeFile(sample.replace('Pacific/Auckland"', 'Pacific/Auckland'))).toMatchObject({
      ok: false,
      where: expect.stringMatching(new RegExp(`^line ${line}, character`)),
      reason: expect.stringContaining('not valid JSON'),
    });
  });
});
