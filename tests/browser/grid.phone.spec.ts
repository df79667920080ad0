/** The table of branches under a thumb. */
import { expect, test } from './house.ts';
import { expectAccessible, openWithoutPicture, sheet } from './pageSteps.ts';

test.use({ locale: 'en-US' });

test('the table scrolls to the side alone, and its tools fit a thumb', async ({ page }) => {
  await openWithoutPicture(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  // A tree of few branches: the checker looks at every cell.
  await page.getByRole('button', { name: 'Young whip' }).click();
  await sheet(page, 'Tree').click();
  await page.getByRole('button', { name: 'Raise the sheet' }).click();
  await page.getByRole('radio', { name: 'Table to type in' }).check();
  await page.locator('.grid-body [data-column=name]').first().tap();
  await page.getByText(/^More to do with/).tap();
  const small = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.sheet-page :is(button, summary, select, input)')]
      .filter((element) => element.checkVisibility())
      .map((element) => {
        const touched = element.closest('label') ?? element;
        const { width, height } = touched.getBoundingClientRect();
        return { what: touched.textContent || touched.outerHTML.slice(0, 80), width, height };
      })
      .filter(({ width, height }) => width < 44 || height < 44),
  );
  expect(small).toEqual([]);
  const wide = await page.locator('.sheet-page').evaluate((el) => el.scrollWidth - el.clientWidth);
  expect(wide).toBe(0);
  const table = await page.locator('.grid-scroll').evaluate((el) => el.scrollWidth - el.clientWidth);
  expect(table).toBeGreaterThan(100);
  await expectAccessible(page);
});
