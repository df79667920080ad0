import { describe, expect, it } from 'vitest';
import { commandFor, commandOf, commands } from '../../src/editor/commands.ts';
import { createEditor } from '../../src/editor/editor.ts';
import { stepTo } from '../../src/editor/selection.ts';
import { smallTree } from './smallTree.ts';

const press = (
  key: string,
  held: Partial<Record<'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey', boolean>> = {},
) => commandFor({ key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held })?.id ?? null;

describe('keys', () => {
  it('run one command each', () => {
    const keys = commands.flatMap((command) => command.keys);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(commands.map((command) => command.id)).size).toBe(commands.length);
  });

  it('undo with Ctrl or Command and Z, redo with Shift too', () => {
    expect(press('z', { ctrlKey: true })).toBe('undo');
    expect(press('z', { metaKey: true })).toBe('undo');
    expect(press('Z', { ctrlKey: true, shiftKey: true })).toBe('redo');
    expect(press('z')).toBeNull();
  });

  it('never need a single letter, which speech input would type', () => {
    for (const key of commands.flatMap((command) => command.keys)) expect(key).not.toMatch(/^.$/);
  });
});

describe('the delete command', () => {
  it('says how many branches go, and is not offered for the trunk', () => {
    const editor = createEditor(smallTree);
    editor.select('lateral');
    expect(commandOf('delete').help(editor)).toBe('Delete East limb, lateral and the 2 branches on it');
    editor.select('trunk');
    expect(commandOf('delete').isReady(editor)).toBe(false);
  });
});

describe('walking the tree', () => {
  it('goes to what a branch grows on, to what grows on it, and round its neighbours', () => {
    expect(stepTo(smallTree, 'lateral', 'parent')).toBe('east');
    expect(stepTo(smallTree, 'east', 'child')).toBe('lateral');
    expect(stepTo(smallTree, 'east', 'next')).toBe('west');
    expect(stepTo(smallTree, 'west', 'next')).toBe('east');
    expect(stepTo(smallTree, 'lateral-b1', 'parent')).toBe('east');
    expect(stepTo(smallTree, null, 'child')).toBe('trunk');
  });
});
