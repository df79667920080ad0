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

  it('give each view one key alone, which can be turned off for those whom speech input types it', () => {
    const views = ['from-north', 'from-east', 'from-south', 'from-west', 'from-above', 'from-front'];
    expect(['1', '2', '3', '4', '5', '6'].map((key) => press(key))).toEqual(views);
    const alone = commands.flatMap((command) => command.keys).filter((key) => key.length === 1);
    const held = { ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };
    for (const key of alone) expect(commandFor({ key, ...held }, false)).toBeNull();
    expect(commandFor({ key: 'z', ...held, ctrlKey: true }, false)?.id).toBe('undo');
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
