import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { writeTreeFile } from '../../src/document/writeTreeFile.ts';
import { createEditor } from '../../src/editor/editor.ts';
import { reshape } from '../../src/editor/edits/reshape.ts';
import { type Kept, keepOnDevice, keptText } from '../../src/editor/keeping.ts';
import { smallTree } from './smallTree.ts';

function shelfOf() {
  const texts = new Map<string, string>();
  return {
    isFull: false,
    writes: 0,
    getItem: (key: string) => texts.get(key) ?? null,
    setItem(key: string, text: string) {
      if (this.isFull) throw new Error('full');
      this.writes++;
      texts.set(key, text);
    },
  };
}

describe('keeping the tree on the device', () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  it('writes once for a row of edits and tells when', () => {
    const editor = createEditor(smallTree);
    const shelf = shelfOf();
    const told: Kept[] = [];
    keepOnDevice(
      editor,
      shelf,
      () => 7131,
      (kept) => told.push(kept),
      300,
    );
    for (const lengthM of [0.41, 0.43, 0.47]) {
      editor.make((file) => reshape(file, 'east', { lengthM }));
      vi.advanceTimersByTime(120);
    }
    expect(told).toEqual([{ state: 'waiting' }]);
    vi.advanceTimersByTime(300);
    expect(told.at(-1)).toEqual({ state: 'kept', atMs: 7131 });
    expect(shelf.writes).toBe(1);
    expect(keptText(shelf)).toBe(writeTreeFile(editor.file()));
  });

  it('says so when the device refuses, and keeps the text it had', () => {
    const editor = createEditor(smallTree);
    const shelf = shelfOf();
    const told: Kept[] = [];
    const keeping = keepOnDevice(
      editor,
      shelf,
      () => 1,
      (kept) => told.push(kept),
    );
    editor.make((file) => reshape(file, 'east', { lengthM: 0.41 }));
    keeping.flush();
    const first = keptText(shelf);
    shelf.isFull = true;
    editor.make((file) => reshape(file, 'east', { lengthM: 0.59 }));
    keeping.flush();
    expect(told.at(-1)).toEqual({ state: 'failed' });
    expect(keptText(shelf)).toBe(first);
  });

  it('does not write for a new selection', () => {
    const editor = createEditor(smallTree);
    const shelf = shelfOf();
    keepOnDevice(
      editor,
      shelf,
      () => 1,
      () => {},
    );
    editor.select('east');
    vi.advanceTimersByTime(2000);
    expect(shelf.writes).toBe(0);
  });
});
