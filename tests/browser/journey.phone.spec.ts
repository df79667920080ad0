/** The whole way under a thumb, by single taps alone: no drag, no double tap, no long press, no key but those of the number pad. */
import type { Locator, Page } from '@playwright/test';
import { branchFigures } from '../../src/editor/figures.ts';
import { expect, test } from './house.ts';
import { readTree } from './keySteps.ts';
import { lightIsDone, openWithoutPicture, workIsDone } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

const measured = [
  { length: '37,5', lengthM: 0.375, leaves: 11 },
  { length: '29', lengthM: 0.29, leaves: 8 },
  { length: '18', lengthM: 0.18, leaves: 6 },
] as const;

/** A tap into the middle of something that a thumb can hit. */
async function tap(what: Locator): Promise<void> {
  await what.scrollIntoViewIfNeeded();
  const touched =
    (await what.locator('xpath=ancestor-or-self::label').count()) > 0
      ? what.locator('xpath=ancestor-or-self::label').first()
      : what;
  const box = await touched.boundingBox();
  if (box === null) throw new Error(`tap: ${String(what)} is not in sight`);
  expect(Math.min(box.width, box.height), `${String(what)} under a thumb`).toBeGreaterThanOrEqual(44);
  await touched.tap();
}

/** What a person does whose own keyboard is up: a tap into the cell, another, the figures, and the tick of the keyboard. */
async function enter(page: Page, cell: Locator, text: string): Promise<void> {
  await tap(cell);
  await tap(cell);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

test('a tree goes from a form to a list and a file by single taps', async ({ page }) => {
  test.setTimeout(180_000);
  page.setDefaultTimeout(20_000);
  await openWithoutPicture(page);
  await tap(page.getByRole('tab', { name: 'Tree' }));
  await tap(page.getByRole('button', { name: 'Raise the sheet' }));
  await tap(page.getByRole('button', { name: 'Start from a form' }));
  await tap(page.getByRole('radio', { name: /^Open vase/ }));
  // A tap on the track of a slider sets it.
  const slider = page.getByRole('slider', { name: 'Shoots on the tree' });
  await slider.scrollIntoViewIfNeeded();
  const { width = 0 } = (await slider.boundingBox()) ?? {};
  await slider.tap({ position: { x: width / 4, y: 22 } });
  const count = Number(await slider.inputValue());
  await tap(page.getByRole('button', { name: 'Take this tree' }));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Open vase');

  await tap(page.getByRole('radio', { name: 'Table to type in' }));
  const rows = page
    .locator('.grid-body [role=row]')
    .filter({ has: page.locator('[data-column=kind]', { hasText: /^shoot$/ }) });
  const ids: string[] = [];
  for (const [i, { length, leaves }] of measured.entries()) {
    const row = rows.nth(2 * i + 1);
    ids.push((await row.getAttribute('data-id')) ?? '');
    await enter(page, row.locator('[data-column=length]'), length);
    await enter(page, row.locator('[data-column=leaves]'), String(leaves));
    await expect(row.locator('[data-column=leavesFrom]')).toHaveText('counted');
  }

  await tap(page.getByRole('tab', { name: 'Light' }));
  await lightIsDone(page);
  await tap(page.locator('.shoots tr[data-id] button').first());
  await expect(page.locator('.detail')).toBeVisible();

  await tap(page.getByRole('tab', { name: 'Work' }));
  await workIsDone(page);
  const cut = page.locator('.cut').first();
  const id = (await cut.getAttribute('data-id')) ?? '';
  const tick = cut.getByRole('checkbox');
  const wasTicked = await tick.isChecked();
  await tap(tick);
  await expect(tick).toBeChecked({ checked: !wasTicked });
  await tap(cut.locator('.cut-open'));
  await tap(page.locator('.cut.is-selected').getByRole('button', { name: 'Keep it' }));
  await workIsDone(page);
  await expect(page.locator(`.cut[data-id="${id}"]`)).toHaveCount(0);

  await tap(page.getByRole('button', { name: 'Menu' }));
  const saving = page.waitForEvent('download');
  await tap(page.locator('#menu').getByRole('button', { name: 'Save' }));
  const { axes } = readTree(await (await saving).path());
  const shoots = axes.filter(({ kind }) => kind === 'shoot');
  expect(shoots).toHaveLength(count);
  measured.forEach(({ lengthM, leaves }, i) => {
    const axis = axes.find((one) => one.id === ids[i]);
    if (axis === undefined) throw new Error('a shoot is missing in the file');
    expect(branchFigures(axis).lengthM).toBeCloseTo(lengthM, 3);
    expect(axis.foliage).toMatchObject({ count: leaves, source: 'measured', midribSource: 'estimated' });
  });
  expect(axes.filter(({ pin }) => pin === 'keep')).toHaveLength(1);
});
