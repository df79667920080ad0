/** A new tree from a form, on a laptop and by keys alone. */
import { readFileSync } from 'node:fs';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { expect, test } from './house.ts';
import { expectAccessible, openPage, openWithoutPicture, sheet, stageIsDrawn } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

test('a tree is started from a form, shown while its sliders move, and undone in one step', async ({
  page,
}) => {
  await openPage(page);
  await stageIsDrawn(page);
  const before = await page.getByRole('heading', { level: 1 }).textContent();
  await sheet(page, 'Tree').click();
  await page.getByRole('button', { name: 'Start from a form' }).click();
  await expect(page.locator('.form-picture .form-wood')).not.toHaveCount(0);
  await page.getByRole('radio', { name: /^Open vase/ }).check();
  await expect(page.locator('[aria-label^="Open vase, in three dimensions"]')).toHaveCount(1);
  const picture = async () => (await page.locator('.stage').screenshot()).toString('base64');
  const first = await picture();
  await page.getByRole('slider', { name: 'Spread, limb tip to limb tip' }).fill('3');
  await expect.poll(picture).not.toBe(first);
  // The open tree is untouched until the new one is taken.
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(before ?? '');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Take this tree' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Open vase');
  await expect(page.getByText('3 limbs, 6 laterals, 24 shoots')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(before ?? '');
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});

test('the tree that is taken has the figures of the sliders', async ({ page }) => {
  await openWithoutPicture(page);
  await sheet(page, 'Tree').click();
  await page.getByRole('button', { name: 'Start from a form' }).click();
  await expect(page.locator('.form-card')).toHaveCount(8);
  await page.getByRole('radio', { name: /^Open vase/ }).check();
  for (const [name, value] of [
    ['Limbs', '4'],
    ['Laterals on each limb', '3'],
    ['Shoots on the tree', '48'],
    ['Trunk to the first fork', '0.62'],
  ] as const)
    await page.getByRole('slider', { name }).fill(value);
  await page.getByRole('button', { name: 'Take this tree' }).click();
  const saving = page.waitForEvent('download');
  await page.locator('body').press('Control+s');
  const read = parseTreeFile(readFileSync(await (await saving).path(), 'utf8'));
  if (!read.ok) throw new Error(read.reason);
  const { axes } = read.file;
  const kinds = ['scaffold', 'lateral', 'shoot'].map((kind) => axes.filter((a) => a.kind === kind).length);
  expect(kinds).toEqual([4, 12, 48]);
});

test('a tree is started by keys alone, and another sheet leaves the open tree as it was', async ({
  page,
}) => {
  await openWithoutPicture(page);
  await sheet(page, 'Tree').click();
  await page.getByRole('button', { name: 'Start from a form' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('radio', { name: /^Single stem/ }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('radio', { name: /^Hard-pruned vase/ })).toBeChecked();
  await page.getByRole('radio', { name: 'Buds' }).focus();
  await page.keyboard.press('Space');
  await expect(page.getByRole('slider', { name: 'Buds on the tree' })).toBeVisible();
  await sheet(page, 'Light').click();
  await sheet(page, 'Tree').click();
  await expect(page.locator('.branches')).toBeVisible();
  await page.getByRole('button', { name: 'Start from a form' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('slider', { name: 'Limbs' }).focus();
  await page.keyboard.press('ArrowRight');
  await page.getByRole('button', { name: 'Take this tree' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('4 limbs, 8 laterals, 24 shoots')).toBeVisible();
});
