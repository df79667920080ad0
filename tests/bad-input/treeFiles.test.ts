import { afterEach, describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { stanceOf, treeOf } from '../../src/document/views.ts';
import { writeTreeFile } from '../../src/document/writeTreeFile.ts';
import { placeTree } from '../../src/geometry/tree.ts';
import { sampleIds, sampleText } from '../document/sampleFiles.ts';
import {
  badMeaning,
  badShapes,
  deep,
  flipBits,
  huge,
  mutate,
  truncated,
  uglyButGood,
  wrongText,
} from './badTrees.ts';

/** The machine is shared and slow at times; a hang is what is looked for. */
const longestMs = 2000;
const prototypeKeys = Object.getOwnPropertyNames(Object.prototype).sort();

afterEach(() => {
  expect(Object.getOwnPropertyNames(Object.prototype).sort()).toEqual(prototypeKeys);
  expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
});

function read(content: string | Uint8Array): ReturnType<typeof parseTreeFile> {
  const start = performance.now();
  const result = parseTreeFile(content);
  expect(performance.now() - start).toBeLessThan(longestMs);
  return result;
}

function expectRefusal(result: ReturnType<typeof parseTreeFile>): void {
  if (result.ok) throw new Error('the file was accepted');
  expect(result.reason).toMatch(/^[^\p{Cc}\p{Cs}]{10,400}$/u);
  expect(result.reason).not.toMatch(/undefined|\[object|NaN|Invalid input/);
  expect(result.where).toMatch(/^[^\p{Cc}\p{Cs}]{1,200}$/u);
}

/** What was accepted can be placed in the world, written and read again as the same bytes. */
function expectSound(result: ReturnType<typeof parseTreeFile>): TreeFile {
  if (!result.ok) throw new Error(`the file was refused, got ${result.where}: ${result.reason}`);
  placeTree(treeOf(result.file), stanceOf(result.file));
  const written = writeTreeFile(result.file);
  const again = parseTreeFile(written);
  if (!again.ok) throw new Error(`what was written is refused, got ${again.where}: ${again.reason}`);
  expect(writeTreeFile(again.file)).toBe(written);
  return result.file;
}

describe('bad tree files are refused with reason and place', () => {
  it.each(wrongText)('$name', ({ content }) => expectRefusal(read(content)));
  it.each(deep)('$name', ({ content }) => expectRefusal(read(content)));
  it.each(huge)('$name', ({ content }) => expectRefusal(read(content)));
  it.each(badShapes)('$name', ({ text }) => expectRefusal(read(text)));
  it.each(badMeaning)('$name', ({ text }) => expectRefusal(read(text)));

  it(`a sample cut off at each of ${truncated.length} places`, () => {
    for (const { content } of truncated) expectRefusal(read(content));
  });

  it('says of a sample cut off in the middle that it stops there', () => {
    const half = sampleText('young-whip').slice(0, 1777);
    expect(parseTreeFile(half)).toMatchObject({
      ok: false,
      where: expect.stringMatching(/^line \d+, character \d+$/),
      reason: expect.stringMatching(/stops in the middle/),
    });
  });
});

describe('ugly files that mean a tree are read clean', () => {
  it.each(uglyButGood)('$name', ({ text }) => {
    const file = expectSound(read(text));
    expect(file.axes[1]?.name).toMatch(/^[^\p{Cc}\p{Cs}\u202a-\u202e]+$/u);
  });
});

describe('damage at random', () => {
  it('1000 times flipped bits, seeds 1 to 1000: refused or sound, never thrown', () => {
    let refused = 0;
    for (let seed = 1; seed <= 1000; seed++) {
      const result = parseTreeFile(flipBits(seed));
      if (result.ok) continue;
      expectRefusal(result);
      refused++;
    }
    expect(refused).toBeGreaterThan(400);
  });

  it.each(sampleIds)('300 changes anywhere in %s, seeds 1 to 300: refused or sound, never thrown', (id) => {
    const text = sampleText(id);
    let refused = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const result = parseTreeFile(mutate(text, seed));
      if (result.ok) expectSound(result);
      else {
        expectRefusal(result);
        refused++;
      }
    }
    expect(refused).toBeGreaterThan(150);
    expect(refused).toBeLessThan(300);
  });
});
