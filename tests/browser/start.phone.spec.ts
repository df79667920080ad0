/** A new tree from a form, under a thumb. */
import { expect, test } from './house.ts';
import { expectAccessible, openWithoutPicture } from './pageSteps.ts';

test.use({ locale: 'en-US' });

test('a form is found in the menu, set and taken, and nothing is too small or too wide', async ({ page }) => {
  await openWithoutPicture(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Start from a form' }).click();
  await page.getByRole('radio', { name: /^Fan/ }).check();
  await page.getByRole('button', { name: 'Raise the sheet' }).click();
  await page.getByText('Where these measures come from').click();
  const small = await page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        '.sheet-page :is(button, summary, input, .segment, .form-card)',
      ),
    ]
      .map((element) => (element.closest('label') ?? element).getBoundingClientRect())
      .filter(({ width, height }) => width > 0 && (width < 44 || height < 44)),
  );
  expect(small).toEqual([]);
  const wide = await page.locator('.sheet-page').evaluate((el) => el.scrollWidth - el.clientWidth);
  expect(wide).toBe(0);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Take this tree' }).tap();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Fan');
  await expect(page.getByText('2 limbs, 6 laterals, 24 shoots')).toBeVisible();
});
