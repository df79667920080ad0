/** The one table of commands: buttons, keys and the help page are all made from it. */
import type { Editor } from './editor.ts';
import { removalWords, remove } from './edits/remove.ts';
import { branchOf, stepTo, type Way } from './selection.ts';

/** What commands ask of the page around the editor. */
export interface Host {
  openFile(): void;
  saveFile(): void;
  showSheet(sheet: 'place' | 'tree' | 'light' | 'work'): void;
  view(side: 'north' | 'east' | 'south' | 'west' | 'above' | 'free'): void;
  showHelp(): void;
  /** A new tree from a form. */
  startTree(): void;
  /** From looking to drawing and back. */
  toggleHand(): void;
}

export interface Command {
  readonly id: string;
  /** On its button. */
  readonly title: string;
  /** The longer words for help, and for the button when they say more than the title. */
  help(editor: Editor): string;
  /**
   * Keys that run it, as `Ctrl+Z`: modifiers in the order Ctrl, Alt, Shift, then the key as `KeyboardEvent.key`
   * names it, letters in capitals. Command serves as Ctrl.
   */
  readonly keys: readonly string[];
  isReady(editor: Editor): boolean;
  run(editor: Editor, host: Host): void;
}

const always = () => true;

const undoCommand: Command = {
  id: 'undo',
  title: 'Undo',
  keys: ['Ctrl+Z'],
  isReady: (editor) => editor.store.getState().history.past.length > 0,
  help: (editor) => {
    const { past, present } = editor.store.getState().history;
    return past.length === 0 ? 'Undo the last change' : `Undo: ${present.said}`;
  },
  run: (editor) => editor.undo(),
};

const redoCommand: Command = {
  id: 'redo',
  title: 'Redo',
  keys: ['Ctrl+Shift+Z', 'Ctrl+Y'],
  isReady: (editor) => editor.store.getState().history.future.length > 0,
  help: (editor) => {
    const next = editor.store.getState().history.future[0];
    return next === undefined ? 'Do again what was undone' : `Do again: ${next.said}`;
  },
  run: (editor) => editor.redo(),
};

const selectedBranch = (editor: Editor) => branchOf(editor.file(), editor.store.getState().selectedId);

const removeCommand: Command = {
  id: 'delete',
  title: 'Delete',
  keys: ['Delete'],
  isReady: (editor) => {
    const id = selectedBranch(editor);
    return id !== null && editor.file().axes.find((axis) => axis.id === id)?.parentId !== null;
  },
  help: (editor) => {
    const id = selectedBranch(editor);
    return id === null
      ? 'Delete the selected branch and all that grows on it'
      : removalWords(editor.file(), id, 'Delete');
  },
  run: (editor) => {
    const id = selectedBranch(editor);
    if (id !== null) editor.make((file) => remove(file, id));
  },
};

const walk = (way: Way, title: string, key: string): Command => ({
  id: `select-${way}`,
  title,
  keys: [key],
  isReady: always,
  help: () => title,
  run: (editor) => editor.select(stepTo(editor.file(), editor.store.getState().selectedId, way)),
});

const page = (
  id: string,
  title: string,
  help: string,
  keys: readonly string[],
  run: (host: Host) => void,
): Command => ({
  id,
  title,
  keys,
  isReady: always,
  help: () => help,
  run: (_, host) => run(host),
});

export const commands: readonly Command[] = [
  undoCommand,
  redoCommand,
  removeCommand,
  {
    id: 'clear-selection',
    title: 'Select nothing',
    keys: ['Escape'],
    isReady: (editor) => editor.store.getState().selectedId !== null,
    help: () => 'Select nothing',
    run: (editor) => editor.select(null),
  },
  walk('parent', 'Select what it grows on', 'Alt+ArrowDown'),
  walk('child', 'Select the first branch on it', 'Alt+ArrowUp'),
  walk('next', 'Select the next branch beside it', 'Alt+ArrowRight'),
  walk('previous', 'Select the branch before it', 'Alt+ArrowLeft'),
  page('open', 'Open', 'Open a tree file from this device', ['Ctrl+O'], (host) => host.openFile()),
  page('start', 'Start from a form', 'Start a new tree from a form', [], (host) => host.startTree()),
  page('save', 'Save', 'Save the tree as a file on this device', ['Ctrl+S'], (host) => host.saveFile()),
  page('place', 'Place', 'Show where the tree stands', ['F2'], (host) => host.showSheet('place')),
  page('tree', 'Tree', 'Show what grew', ['F3'], (host) => host.showSheet('tree')),
  page('light', 'Light', 'Show who gets how much light', ['F4'], (host) => host.showSheet('light')),
  page('work', 'Work', 'Show what to do', ['F8'], (host) => host.showSheet('work')),
  page('from-north', 'North', 'Look from the north', ['1'], (host) => host.view('north')),
  page('from-east', 'East', 'Look from the east', ['2'], (host) => host.view('east')),
  page('from-south', 'South', 'Look from the south', ['3'], (host) => host.view('south')),
  page('from-west', 'West', 'Look from the west', ['4'], (host) => host.view('west')),
  page('from-above', 'Above', 'Look from above', ['5'], (host) => host.view('above')),
  page('from-front', 'Free', 'Look from where you stand, near things larger', ['6'], (host) =>
    host.view('free'),
  ),
  page('draw', 'Draw', 'Draw and pull branches, or only look', ['D'], (host) => host.toggleHand()),
  page('help', 'Help', 'Show this list', ['F1'], (host) => host.showHelp()),
];

/** The command of that id. Throws when there is none. */
export function commandOf(id: string): Command {
  const command = commands.find((c) => c.id === id);
  if (command === undefined) throw new Error(`commandOf: no command called ${id}`);
  return command;
}

export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** A key without Ctrl, Alt or Shift that types something: speech input and a slip of the hand press it too. */
export const isSingle = (key: string): boolean => key.length === 1;

/**
 * The command a key press asks for, or null.
 * @param withSingles whether keys that type something may run a command
 */
export function commandFor(press: KeyPress, withSingles = true): Command | null {
  const key = press.key.length === 1 ? press.key.toUpperCase() : press.key;
  const name = [
    press.ctrlKey || press.metaKey ? 'Ctrl+' : '',
    press.altKey ? 'Alt+' : '',
    press.shiftKey ? 'Shift+' : '',
    key,
  ].join('');
  if (!withSingles && isSingle(name)) return null;
  return commands.find((c) => c.keys.includes(name)) ?? null;
}
