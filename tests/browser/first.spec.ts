/** The cut list comes before it is known how sure it is, and keeps the place of one who works by keys. */
import type { Page } from '@playwright/test';
import { expect, test } from './house.ts';
import { expectAccessible, openSample, openWithoutPicture, sheet, workIsDone } from './pageSteps.ts';

const listedIds = async (page: Page): Promise<(string | null)[]> =>
  await page.locator('.cut').evaluateAll((rows) => rows.map((row) => row.getAttribute('data-id')));

test.use({ locale: 'en-GB' });
test.setTimeout(180_000);

test('a first list can be read and worked on while it is tried, and the focus stays on its cut', async ({
  page,
}) => {
  await openWithoutPicture(page);
  await openSample(page, 'Potted fig at bud break');
  await sheet(page, 'Work').click();
  await expect(page.locator('.progress')).toBeVisible();
  const state = page.getByTestId('work-state');
  await expect(state).toContainText('still being tried', { timeout: 120_000 });
  const ids = await listedIds(page);
  const open = page.locator('.cut .cut-open').last();
  const last = ids.at(-1);
  await open.focus();
  await expect(page.locator('.progress-words')).toContainText(/\d+ of 32/, { timeout: 60_000 });
  await expectAccessible(page);
  await workIsDone(page);
  const after = await listedIds(page);
  expect(new Set(after)).toEqual(new Set(ids));
  expect(after).toHaveLength(ids.length);
  await expect(page.locator(`.cut[data-id="${last}"] .cut-open`)).toBeFocused();
});

test('stopped while it is tried, the list stays', async ({ page }) => {
  await openWithoutPicture(page);
  await openSample(page, 'Potted fig at bud break');
  await sheet(page, 'Work').click();
  await expect(page.getByTestId('work-state')).toContainText('still being tried', { timeout: 120_000 });
  const count = await page.locator('.cut').count();
  await page.locator('.progress').getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByTestId('work-state')).toContainText('has not been tried');
  await expect(page.locator('.cut')).toHaveCount(count);
  expect(count).toBeGreaterThan(5);
});
