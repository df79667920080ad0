import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../../src/document/parseTreeFile.ts';
import { writeTreeFile } from '../../../src/document/writeTreeFile.ts';
import { createEditor } from '../../../src/editor/editor.ts';
import { openInto, samples } from '../../../src/ui/files/openFile.ts';
import { smallTree } from '../../editor/smallTree.ts';

describe('opening a tree file', () => {
  it('puts it in place of the open one, as a step that can be undone', () => {
    const editor = createEditor(smallTree);
    const text = writeTreeFile({ ...smallTree, id: 'other', name: 'Other fig' });
    expect(openInto(editor, 'other.json', text)).toBe(true);
    expect(editor.file().name).toBe('Other fig');
    editor.undo();
    expect(editor.file()).toBe(smallTree);
  });

  it('says what is wrong with a bad one, where, and leaves the open tree alone', () => {
    const editor = createEditor(smallTree);
    const text = writeTreeFile(smallTree).replace('"latitudeDeg": 46.7', '"latitudeDeg": 146.7');
    expect(openInto(editor, 'far.json', text)).toBe(false);
    expect(editor.file()).toBe(smallTree);
    const notice = editor.store.getState().notice;
    expect(notice?.kind).toBe('refused');
    expect(notice?.text).toContain('far.json was not opened');
    expect(notice?.text).toContain('latitudeDeg');
  });
});

describe('the samples', () => {
  it.each(samples.map((sample) => sample.id))('%s is there and can be read', (id) => {
    const parsed = parseTreeFile(readFileSync(`public/examples/${id}.json`, 'utf8'));
    expect(parsed).toMatchObject({ ok: true, file: { id } });
  });
});
