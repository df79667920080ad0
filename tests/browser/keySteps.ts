/** The page worked by keys alone. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';

export const isFocused = (what: Locator): Promise<boolean> =>
  what.evaluateAll((found) => found.some((element) => element === document.activeElement));

/** Presses a key until the focus is there; fails when it does not lead there. */
export async function keyTo(page: Page, key: string, what: Locator, most = 120): Promise<void> {
  for (let n = 0; n < most; n++) {
    if (await isFocused(what)) return;
    await page.keyboard.press(key);
  }
  const at = await page.evaluate(() => document.activeElement?.outerHTML.slice(0, 120));
  throw new Error(`keyTo: ${most} times ${key} do not lead to ${String(what)}, only to ${at}`);
}

export const tabTo = (page: Page, what: Locator): Promise<void> => keyTo(page, 'Tab', what);

/** Saves by key, wherever the focus is, and reads the file. */
export async function savedByKey(page: Page): Promise<TreeFile> {
  const saving = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  return readTree(await (await saving).path());
}

export function readTree(path: string): TreeFile {
  const read = parseTreeFile(readFileSync(path, 'utf8'));
  if (!read.ok) throw new Error(read.reason);
  return read.file;
}

/** The focused cell of the table: its branch's name, its column, and its text. */
export const focusedCell = (page: Page) =>
  page.evaluate(() => {
    const cell = document.activeElement?.closest('[data-column]');
    return {
      id: cell?.closest('[role=row]')?.getAttribute('data-id') ?? '',
      column: cell?.getAttribute('data-column') ?? '',
      text: cell?.textContent ?? '',
    };
  });
