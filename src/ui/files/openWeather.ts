/** Taking the weather of an hourly weather file into the open tree. */
import type { Editor } from '../../editor/editor.ts';

/** Larger files are turned away before they are read: a year of hours is below 2 MB. */
const largestBytes = 12 * 1024 * 1024;

export const isWeatherFile = (name: string): boolean => /\.epw$/i.test(name);

const refusal = (name: string, reason: string): string =>
  `The weather of ${name} was not taken. ${reason} The weather in use is as it was.`;

/** Puts the weather of the file's text in place of the tree's own, as one step that can be undone, or says why not. */
export async function takeWeather(editor: Editor, name: string, text: string): Promise<boolean> {
  // Read for few trees, so kept out of the page's first load.
  const { withEpw } = await import('../../document/withEpw.ts');
  const before = editor.file();
  const taken = withEpw(before, text);
  if (!taken.ok) {
    editor.say({
      kind: 'refused',
      text: refusal(name, `${taken.reason} Place in the file: ${taken.where}.`),
    });
    return false;
  }
  const { file, notes } = taken;
  editor.make(() => ({ ok: true, file, said: 'Took the weather of a file' }));
  editor.say({ kind: 'done', text: [`Took the weather of ${name}.`, ...notes].join(' ') });
  return true;
}

export async function takeWeatherFromDevice(editor: Editor, file: File): Promise<void> {
  if (file.size > largestBytes) {
    const reason = 'It is larger than 12 MB, and a year of hours is far smaller.';
    editor.say({ kind: 'refused', text: refusal(file.name, reason) });
    return;
  }
  await takeWeather(editor, file.name, await file.text());
}
