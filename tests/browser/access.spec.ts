/**
 * The sheets but Work, and what opens in them, in every theme and at three widths: the accessibility checker, the size of what is
 * touched, and no scrolling to the side. One page is loaded for all; the file runs on a laptop, narrowed to a phone and to 400 %.
 */
import type { Page } from '@playwright/test';
import { themes } from '../../src/ui/state/preferences.ts';
import { expect, test } from './house.ts';
import { expectAccessible, lookAt, openSample, openWithoutPicture, sheet } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

/** WCAG 2.2, 2.5.8: 24 by 24; outdoors, with gloves, 44 by 44. */
const smallest = (theme: (typeof themes)[number]): number => (theme === 'outdoors' ? 44 : 24);

/** Things to touch that are smaller than that; links within a sentence are exempt. */
const tooSmall = (page: Page, px: number): Promise<string[]> =>
  page.evaluate((least) => {
    const touchable = 'button, select, summary, input:not([type=file]), [role=slider], [role=tab], a[href]';
    return [...document.querySelectorAll<HTMLElement>(touchable)]
      .filter(
        (element) =>
          element.checkVisibility({ visibilityProperty: true }) &&
          element.closest('[popover]:not(:popover-open), dialog:not([open]), .unseen, p a') === null,
      )
      .map((element) => element.closest('label') ?? element)
      .map((touched) => ({ touched, box: touched.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 1 && (box.width < least - 0.5 || box.height < least - 0.5))
      .map(
        ({ touched, box }) =>
          `${(touched.textContent || touched.outerHTML).slice(0, 60)} ${Math.round(box.width)} x ${Math.round(box.height)}`,
      );
  }, px);

/** How far the page or the sheet runs off the side; tables and the stage may scroll in themselves. */
const sideways = (page: Page): Promise<number> =>
  page.evaluate(() =>
    Math.max(
      ...['html', '.sheet-page'].map((of) => {
        const part = document.querySelector(of);
        return part === null ? 0 : part.scrollWidth - part.clientWidth;
      }),
    ),
  );

async function look(page: Page, theme: (typeof themes)[number]): Promise<void> {
  await page.evaluate((name) => {
    document.documentElement.dataset['theme'] = name;
  }, theme);
}

const widths = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
  // 1280 by 1024 at 400 %.
  { width: 320, height: 256 },
] as const;

/** All themes and widths of what is open. */
async function expectFit(page: Page, what: string): Promise<void> {
  const faults: string[] = [];
  for (const size of widths) {
    await page.setViewportSize(size);
    const wide = await sideways(page);
    if (wide > 0) faults.push(`${what} at ${size.width}: runs off the side by ${wide} px`);
    for (const theme of themes) {
      await look(page, theme);
      for (const small of await tooSmall(page, smallest(theme)))
        faults.push(`${what} at ${size.width}, ${theme}: too small: ${small}`);
    }
  }
  // Colours differ by theme, order and names by what is laid out at a width: each theme once, each width once.
  for (const [i, theme] of themes.entries()) {
    await look(page, theme);
    await page.setViewportSize(widths[i] ?? widths[0]);
    await expectAccessible(page);
  }
  await page.setViewportSize(widths[0]);
  await look(page, themes[0]);
  expect.soft(faults, what).toEqual([]);
}

test.beforeEach(async ({ page }) => {
  test.setTimeout(240_000);
  await openWithoutPicture(page);
  // A tree of few branches: the checker looks at every row.
  await openSample(page, 'Young whip');
});

test('the tree, its table and the forms fit every theme and width', async ({ page }) => {
  await sheet(page, 'Tree').click();
  await page.locator('.branches tbody').first().getByRole('button').first().click();
  await page.getByText('Leaves: counted or estimated').click();
  await expectFit(page, 'Tree, list');
  await page.getByRole('radio', { name: 'Table to type in' }).check();
  await page.locator('.grid-body [data-column=name]').first().click();
  await page.getByRole('checkbox', { name: /^Tick/ }).first().check();
  await expectFit(page, 'Tree, table');
  await page.getByRole('button', { name: 'Start from a form' }).click();
  await expectFit(page, 'Tree, forms');
});

test('the place, the light and help fit every theme and width', async ({ page }) => {
  await sheet(page, 'Place').click();
  await expectFit(page, 'Place');
  await sheet(page, 'Light').click();
  for (const part of ['Shoots', 'Day', 'Sky', 'Spread'] as const) {
    await lookAt(page, part);
    await expectFit(page, `Light, ${part}`);
  }
  await page.keyboard.press('F1');
  await expectFit(page, 'Help');
});
