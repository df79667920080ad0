/** The page under a thumb. */
import { expect, test } from './house.ts';
import { expectAccessible, lookAt, openPage, openWithoutPicture, sheet, workIsDone } from './pageSteps.ts';

// US units have the longest figures.
test.use({ locale: 'en-US' });

/** Things to touch that are smaller than a thumb, among those in sight. */
const tooSmall = () =>
  [...document.querySelectorAll<HTMLElement>('button, select, summary, input:not([type=file]), .tick')]
    .filter(
      (element) => element.checkVisibility() && element.closest('[popover]:not(:popover-open)') === null,
    )
    .map((element) => {
      // A tick box is touched by its whole label.
      const touched = element.closest('label') ?? element;
      const box = touched.getBoundingClientRect();
      return {
        what: element.textContent || element.className || element.tagName,
        width: box.width,
        height: box.height,
      };
    })
    .filter(({ width, height }) => (width < 44 || height < 44) && width > 0)
    .map(({ what, width, height }) => `${what} ${Math.round(width)} x ${Math.round(height)}`);

test('the sheet slides up in three steps and leaves undo within reach', async ({ page }) => {
  await openPage(page);
  const top = async () => (await page.locator('.sheet').boundingBox())?.y ?? 0;
  await expect(page.getByRole('button', { name: 'Undo' })).toBeInViewport();
  const half = await top();
  await page.getByRole('button', { name: 'Raise the sheet' }).click();
  await expect.poll(top).toBeLessThan(half - 200);
  await page.getByRole('button', { name: 'Lower the sheet' }).click();
  await expect.poll(top).toBeGreaterThan(half + 100);
  await expect(page.getByTestId('headline')).toBeInViewport();
  await sheet(page, 'Work').click();
  await expect.poll(top).toBe(half);
});

test('work at bud break is read under a thumb, and each bud is shown on the bare tree', async ({ page }) => {
  test.setTimeout(120_000);
  await openWithoutPicture(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Potted fig at bud break' }).click();
  await sheet(page, 'Work').click();
  await workIsDone(page);
  // The list begins in sight, whatever stands before it.
  await expect(page.locator('.cut-open').first()).toBeInViewport();
  await page.getByRole('button', { name: 'Raise the sheet' }).click();
  expect(await page.evaluate(tooSmall)).toEqual([]);
  const wide = await page.locator('.sheet-page').evaluate((el) => el.scrollWidth - el.clientWidth);
  expect(wide, `Work runs off the side by ${wide} px`).toBe(0);
  await expectAccessible(page);
  const rubbed = page.locator('.cut').filter({ hasText: 'Bud' }).first();
  await rubbed.locator('.cut-open').click();
  await expect(rubbed).toHaveClass(/is-selected/);
  await rubbed.getByRole('button', { name: 'Show on the tree' }).click();
  await expect(page.locator('.sheet')).toHaveAttribute('data-size', 'half');
  await expect(page.getByRole('radio', { name: 'Now' })).toBeChecked();
  await expect(page.getByRole('group', { name: /^Picked: Bud/ })).toBeInViewport();
  expect(await page.evaluate(tooSmall)).toEqual([]);
});

test('nothing to touch is smaller than a thumb, and nothing runs off the side', async ({ page }) => {
  await openWithoutPicture(page);
  await page.getByRole('button', { name: 'Raise the sheet' }).click();
  for (const name of ['Place', 'Tree', 'Light'] as const) {
    await sheet(page, name).click();
    if (name === 'Tree') await page.locator('.branches tbody').nth(2).getByRole('button').first().click();
    expect(await page.evaluate(tooSmall), name).toEqual([]);
    const wide = await page.locator('.sheet-page').evaluate((el) => el.scrollWidth - el.clientWidth);
    expect(wide, `${name} runs off the side by ${wide} px`).toBe(0);
    await expectAccessible(page);
  }
});

test('every way to look at the light fits under a thumb', async ({ page }) => {
  await openWithoutPicture(page);
  await page.locator('.shoots tr[data-id] button').first().click();
  await expect(page.locator('.detail')).toBeVisible();
  await page.getByText('The limits of the classes').click();
  for (const name of ['Day', 'Sky', 'Spread', 'Shoots'] as const) {
    await lookAt(page, name);
    // What was chosen stands beside the tree, not below the fold.
    await expect(page.getByRole('radio', { name, exact: true })).toBeInViewport();
    expect(await page.evaluate(tooSmall), name).toEqual([]);
    const wide = await page.locator('.sheet-page').evaluate((el) => el.scrollWidth - el.clientWidth);
    expect(wide, `${name} runs off the side by ${wide} px`).toBe(0);
  }
});
