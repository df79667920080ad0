/** Taking the weather of an hourly weather file into the open tree. */
import type { Workbench } from '../state/workbench.ts';

type Hands = Pick<Workbench, 'editor' | 'readWeather'>;

/** Larger files are turned away before they are read: a year of hours is below 2 MB. */
const largestBytes = 12 * 1024 * 1024;

export const isWeatherFile = (name: string): boolean => /\.epw$/i.test(name);

const refusal = (name: string, reason: string): string =>
  `The weather of ${name} was not taken. ${reason} The weather in use is as it was.`;

/** Puts the weather of the file's text in place of the tree's own, as one step that can be undone, or says why not. */
export async function takeWeather(
  { editor, readWeather }: Hands,
  name: string,
  text: string,
): Promise<boolean> {
  const asked = editor.file();
  const taken = await readWeather(asked, text).catch((error: unknown) => ({
    ok: false as const,
    reason: error instanceof Error ? error.message : String(error),
    where: '',
  }));
  // It was read for the place of another tree.
  if (editor.file().id !== asked.id) return false;
  if (!taken.ok) {
    editor.say({
      kind: 'refused',
      text: refusal(
        name,
        taken.where === '' ? taken.reason : `${taken.reason} Place in the file: ${taken.where}.`,
      ),
    });
    return false;
  }
  const { climate } = taken.file.site;
  // The tree may have been edited meanwhile.
  editor.make((now) => ({
    ok: true,
    file: { ...now, site: { ...now.site, climate } },
    said: 'Took the weather of a file',
  }));
  editor.say({ kind: 'done', text: [`Took the weather of ${name}.`, ...taken.notes].join(' ') });
  return true;
}

export async function takeWeatherFromDevice(hands: Hands, file: File): Promise<void> {
  if (file.size > largestBytes) {
    const reason = 'It is larger than 12 MB, and a year of hours is far smaller.';
    hands.editor.say({ kind: 'refused', text: refusal(file.name, reason) });
    return;
  }
  await takeWeather(hands, file.name, await file.text());
}
