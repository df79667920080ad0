import { describe, expect, it } from 'vitest';
import type { TreeFile } from '../../../src/document/treeFile.ts';
import { createEditor, type Editor } from '../../../src/editor/editor.ts';
import { createInPlaceEngine } from '../../../src/engine/inPlaceEngine.ts';
import { isWeatherFile, takeWeather } from '../../../src/ui/files/openWeather.ts';
import { smallTree } from '../../editor/smallTree.ts';
import { madeEpw } from '../../season/epw/madeEpw.ts';

const engine = createInPlaceEngine();
const { latitudeDeg, longitudeDeg } = smallTree.site;
const { text } = madeEpw({ latitudeDeg, longitudeDeg, zoneH: 1, years: [2003] });

/** As the page has them, with the engine on this thread. */
const handsOn = (editor: Editor) => ({
  editor,
  readWeather: (file: TreeFile, epw: string) => engine.takeWeather(file, epw).result,
});

describe('a weather file', () => {
  it('gives the open tree its hours, as one step that can be undone', async () => {
    const editor = createEditor(smallTree);
    expect(await takeWeather(handsOn(editor), 'valley.epw', text)).toBe(true);
    const { climate, frost } = editor.file().site;
    expect(climate.hourly?.source).toContain('2003');
    expect(frost).toEqual(smallTree.site.frost);
    expect(editor.store.getState().notice?.text).toContain('Took the weather of valley.epw');
    editor.undo();
    expect(editor.file()).toBe(smallTree);
  });

  it('goes into the tree as it has become meanwhile', async () => {
    const editor = createEditor(smallTree);
    const taking = takeWeather(handsOn(editor), 'valley.epw', text);
    editor.make((file) => ({ ok: true, file: { ...file, name: 'Edited meanwhile' }, said: 'Renamed' }));
    await taking;
    expect(editor.file().name).toBe('Edited meanwhile');
    expect(editor.file().site.climate.hourly).toBeDefined();
  });

  it('is refused in words when its reader breaks down, and left out when another tree was opened', async () => {
    const editor = createEditor(smallTree);
    const broken = { editor, readWeather: () => Promise.reject(new Error('The calculation stopped.')) };
    expect(await takeWeather(broken, 'valley.epw', text)).toBe(false);
    expect(editor.store.getState().notice?.text).toContain('The calculation stopped.');
    const taking = takeWeather(handsOn(editor), 'valley.epw', text);
    const other = { ...smallTree, id: '11111111-2222-4333-8444-555555555555' };
    editor.open(other);
    expect(await taking).toBe(false);
    expect(editor.file().site.climate).toEqual(other.site.climate);
  });

  it('that cannot be read is refused in words, with its place, and the weather stays', async () => {
    const editor = createEditor(smallTree);
    const broken = text.replace('LOCATION', 'PLACE');
    expect(await takeWeather(handsOn(editor), 'broken.epw', broken)).toBe(false);
    expect(editor.file()).toBe(smallTree);
    const notice = editor.store.getState().notice;
    expect(notice?.kind).toBe('refused');
    expect(notice?.text).toMatch(/broken\.epw was not taken.*line 1\. The weather in use is as it was/);
  });

  it('of another latitude is refused', async () => {
    const editor = createEditor(smallTree);
    const far = madeEpw({ latitudeDeg: latitudeDeg - 9, longitudeDeg, zoneH: 1, years: [2003] }).text;
    expect(await takeWeather(handsOn(editor), 'far.epw', far)).toBe(false);
    expect(editor.store.getState().notice?.text).toContain('latitude');
  });

  it('is known by its ending', () => {
    expect(['a.epw', 'B.EPW', 'a.epw.json', 'tree.json'].map(isWeatherFile)).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });
});
