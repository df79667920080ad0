/** Seeing into the crown: by taps and by keys, with the legend telling what is hidden and every figure as it was. */
import type { Page } from '@playwright/test';
import type { StageProbe } from '../../src/ui/scene/stageModel.ts';
import { expect, test } from './house.ts';
import { expectAccessible, lightIsDone, openPage, stageIsDrawn, strongColours } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

async function openDone(page: Page): Promise<void> {
  await openPage(page);
  await stageIsDrawn(page);
  await lightIsDone(page);
  await page.locator('.inside summary').click();
}

/** How many of a grid of pixels have a shoot, by what a tap there would choose. */
const shootsSeen = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const probe = (window as Window & { boughlightStage?: StageProbe }).boughlightStage;
    const box = document.querySelector('.stage canvas')?.getBoundingClientRect();
    if (probe === undefined || box === undefined) return 0;
    let seen = 0;
    for (let y = 60; y < box.height - 60; y += 13)
      for (let x = 20; x < box.width - 20; x += 13) if (probe.pick(x, y) !== null) seen += 1;
    return seen;
  });

const figures = async (page: Page): Promise<string> => (await page.locator('.sheet-page').innerText()).trim();

test('the shade is found: what is lit steps back, and the figures stay', async ({ page }) => {
  await openDone(page);
  const [all, told] = [await strongColours(page), await figures(page)];
  await page.getByRole('checkbox', { name: 'Find the shade' }).check();
  await expect(page.locator('.legend')).toContainText('Faint: 27 % and more');
  await expect(async () => {
    const { blue, yellow } = await strongColours(page);
    expect(yellow).toBeLessThan(all.yellow / 4);
    expect(blue).toBeGreaterThan(0.002);
  }).toPass();
  expect(await figures(page)).toBe(told);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Show all leaves' }).click();
  await expect(page.locator('.legend')).not.toContainText('Faint');
  await expect(async () => {
    expect((await strongColours(page)).yellow).toBeGreaterThan(0.9 * all.yellow);
  }).toPass();
});

test('the near side and all but a layer are left out by keys, and what is not seen is not met', async ({
  page,
}) => {
  await openDone(page);
  const [all, told] = [await shootsSeen(page), await figures(page)];
  await page.getByRole('checkbox', { name: 'Open the near side' }).focus();
  await page.keyboard.press('Space');
  await expect(page.locator('.legend')).toContainText('Near side left out');
  await expect.poll(() => shootsSeen(page)).toBeLessThan(0.97 * all);
  await page.keyboard.press('Space');
  await expect.poll(() => shootsSeen(page)).toBe(all);
  await page.getByRole('slider', { name: 'Up to' }).focus();
  await page.keyboard.press('Home');
  await page.getByRole('slider', { name: 'From' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(page.locator('.legend')).toContainText('Leaves only from 5 cm to 5 cm up');
  await expect.poll(() => shootsSeen(page)).toBeLessThan(0.8 * all);
  expect(await figures(page)).toBe(told);
});
