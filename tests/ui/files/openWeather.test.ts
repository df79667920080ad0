import { describe, expect, it } from 'vitest';
import { createEditor } from '../../../src/editor/editor.ts';
import { isWeatherFile, takeWeather } from '../../../src/ui/files/openWeather.ts';
import { smallTree } from '../../editor/smallTree.ts';
import { madeEpw } from '../../season/epw/madeEpw.ts';

const { latitudeDeg, longitudeDeg } = smallTree.site;
const { text } = madeEpw({ latitudeDeg, longitudeDeg, zoneH: 1, years: [2003] });

describe('a weather file', () => {
  it('gives the open tree its hours, as one step that can be undone', async () => {
    const editor = createEditor(smallTree);
    expect(await takeWeather(editor, 'valley.epw', text)).toBe(true);
    const { climate, frost } = editor.file().site;
    expect(climate.hourly?.source).toContain('2003');
    expect(frost).toEqual(smallTree.site.frost);
    expect(editor.store.getState().notice?.text).toContain('Took the weather of valley.epw');
    editor.undo();
    expect(editor.file()).toBe(smallTree);
  });

  it('that cannot be read is refused in words, with its place, and the weather stays', async () => {
    const editor = createEditor(smallTree);
    const broken = text.replace('LOCATION', 'PLACE');
    expect(await takeWeather(editor, 'broken.epw', broken)).toBe(false);
    expect(editor.file()).toBe(smallTree);
    const notice = editor.store.getState().notice;
    expect(notice?.kind).toBe('refused');
    expect(notice?.text).toMatch(/broken\.epw was not taken.*line 1\. The weather in use is as it was/);
  });

  it('of another latitude is refused', async () => {
    const editor = createEditor(smallTree);
    const far = madeEpw({ latitudeDeg: latitudeDeg - 9, longitudeDeg, zoneH: 1, years: [2003] }).text;
    expect(await takeWeather(editor, 'far.epw', far)).toBe(false);
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
