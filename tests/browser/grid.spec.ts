/** The table of branches: a tree typed in by keys alone. */
import type { Page } from '@playwright/test';
import { branchFigures } from '../../src/editor/figures.ts';
import { expect, test } from './house.ts';
import { savedByKey } from './keySteps.ts';
import { expectAccessible, openWithoutPicture, sheet } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

async function openGrid(page: Page): Promise<void> {
  await openWithoutPicture(page);
  await sheet(page, 'Tree').click();
  await page.getByRole('radio', { name: 'Table to type in' }).check();
  await expect(page.getByRole('treegrid')).toBeVisible();
}

/** A tree of few branches: the checker looks at every cell. */
async function openWhip(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Young whip' }).click();
  await expect(page.locator('.grid-body [role=row]')).toHaveCount(1);
}

const focusedColumn = (page: Page) =>
  page.evaluate(() => document.activeElement?.getAttribute('data-column') ?? null);

test('a branch is added, named, measured and ticked by keys alone, each entry one step of undo', async ({
  page,
}) => {
  await openGrid(page);
  await openWhip(page);
  const rows = page.locator('.grid-body [role=row]');
  const before = await rows.count();
  await rows.first().locator('[data-column=name]').focus();
  await page.keyboard.press('Insert');
  await expect(rows).toHaveCount(before + 1);
  const row = page.locator('.grid-body [aria-selected=true]');
  await expect(row.locator('[data-column=name]')).toBeFocused();
  await page.keyboard.type('Low branch');
  await page.keyboard.press('Enter');
  await expect(row.locator('[data-column=name]')).toHaveText('Low branch');
  await expect(row.locator('[data-column=name]')).toBeFocused();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
  expect(await focusedColumn(page)).toBe('length');
  await page.keyboard.type('37,5');
  await page.keyboard.press('Tab');
  await expect.poll(() => focusedColumn(page)).toBe('side');
  await page.keyboard.type('SE');
  await page.keyboard.press('Tab');
  await page.keyboard.type('nothing');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: 'cannot be used as Upright' })).toBeVisible();
  await page.keyboard.type('52');
  await page.keyboard.press('Escape');
  await page.keyboard.press('F2');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('61');
  await page.keyboard.press('Enter');
  await expect(row.locator('[data-column=upright]')).toHaveText('61');
  await page.keyboard.press('Space');
  await expect(page.getByRole('heading', { name: 'With the 1 ticked branch' })).toBeVisible();
  const branch = (await savedByKey(page)).axes.find((axis) => axis.name === 'Low branch');
  if (branch === undefined) throw new Error('the branch is not in the file');
  const figures = branchFigures(branch);
  expect(figures.lengthM).toBeCloseTo(0.375, 3);
  expect(figures.bearingDeg).toBeCloseTo(135, 1);
  expect(figures.fromUprightDeg).toBeCloseTo(61, 1);
  await row.locator('[data-column=name]').focus();
  await page.keyboard.press('Delete');
  await expect(rows).toHaveCount(before);
  // Deleted, upright, side, length, name, added.
  for (let i = 0; i < 6; i++) await page.locator('body').press('Control+z');
  await expect(rows).toHaveCount(before);
  await expect(page.getByRole('button', { name: 'Undo' })).toHaveAttribute('title', /Opened/);
});

test('rows of a spreadsheet become branches, and the ticked ones are marked and deleted together', async ({
  page,
}) => {
  await openGrid(page);
  await openWhip(page);
  await page.locator('.grid-body [data-column=name]').first().focus();
  await page.evaluate(() => {
    const data = new DataTransfer();
    data.setData(
      'text/plain',
      'Name\tGrows on\tAlong it\tLength\nFirst pasted\tWhip\t40\t55\nSecond pasted\tFirst pasted\t20\t31',
    );
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
    );
  });
  await expect(page.getByRole('gridcell', { name: 'Second pasted', exact: true })).toBeVisible();
  await page.getByRole('checkbox', { name: 'Tick First pasted' }).check();
  await page.getByRole('checkbox', { name: 'Tick Second pasted' }).check();
  await page.getByLabel('Mark as, Condition').selectOption('dead');
  const marked = page.locator('.grid-body [role=row]').filter({ hasText: 'First pasted' }).first();
  await expect(marked.locator('[data-column=condition]')).toHaveText('dead');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Delete them' }).click();
  await expect(page.locator('.notice')).toHaveText('Deleted 2 branches');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.locator('[data-column=name]', { hasText: 'First pasted' })).toBeVisible();
});
