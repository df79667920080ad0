/** The light while a tree is pulled into shape: it follows, and says when it is of a moment ago. */
import type { Page } from '@playwright/test';
import { expect, test } from './house.ts';
import { openPage, sheet, stageIsDrawn, strongColours } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

type Noting = Window & { agesSeen?: string[] };

/** Writes down from now on what the legend says of the age of its light. */
const noteAges = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const seen: string[] = [];
    (window as Noting).agesSeen = seen;
    new MutationObserver(() => {
      const said = document.querySelector('[data-testid=light-age]')?.textContent ?? '';
      if (said !== seen.at(-1)) seen.push(said);
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });

const agesSeen = (page: Page): Promise<string[]> => page.evaluate(() => (window as Noting).agesSeen ?? []);

const isCaughtUp = (page: Page): Promise<void> => expect(page.getByTestId('light-age')).toHaveCount(0);

/** Stretches in which the page's own thread was held up, milliseconds; it counts from its first call. */
const heldUpMs = (page: Page): Promise<number[]> =>
  page.evaluate(() => {
    const here = window as Window & { heldUp?: number[] };
    if (here.heldUp === undefined) {
      const held: number[] = [];
      here.heldUp = held;
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) held.push(Math.round(duration));
      }).observe({ type: 'longtask' });
    }
    return here.heldUp;
  });

test('the light follows a tree that is pulled, grey until it has caught up', async ({ page }, testInfo) => {
  await openPage(page);
  await stageIsDrawn(page);
  await isCaughtUp(page);
  await sheet(page, 'Tree').click();
  await noteAges(page);
  await page.getByRole('button', { name: 'Start from a form' }).click();
  await page.getByRole('radio', { name: /^Open vase/ }).check();
  // Nothing is known of a tree that has only just been thought of; then it has a light of its own.
  await expect.poll(() => agesSeen(page)).toContain('Light on its way');
  await isCaughtUp(page);
  await expect.poll(async () => (await strongColours(page)).blue).toBeGreaterThan(0.004);
  await heldUpMs(page);
  const slider = page.getByRole('slider', { name: 'Spread, limb tip to limb tip' });
  await slider.focus();
  for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowRight');
  await expect.poll(() => agesSeen(page)).toContain('Grey: light of a moment ago');
  await isCaughtUp(page);
  testInfo.annotations.push({ type: 'held up, ms', description: (await heldUpMs(page)).join(', ') });
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  await isCaughtUp(page);
});

test('a limb that is pulled on the stage is lit as it is drawn, before the hand lets go', async ({
  page,
}) => {
  await openPage(page);
  await stageIsDrawn(page);
  await sheet(page, 'Tree').click();
  await page.getByRole('button', { name: /^South-east limb \d/ }).click();
  await page.keyboard.press('3');
  await page.keyboard.press('d');
  const tip = page.locator('[data-handle="tip-0"]');
  await expect(tip).toBeVisible();
  await isCaughtUp(page);
  await noteAges(page);
  const box = await tip.boundingBox();
  if (box === null) throw new Error('the tip is not in the picture');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 60, y - 25, { steps: 5 });
  await expect.poll(() => agesSeen(page)).toContain('Grey: light of a moment ago');
  // The hand rests, and the light of what it holds is there: nothing was made of it yet.
  await isCaughtUp(page);
  await expect(page.locator('[data-command=undo]')).toBeDisabled();
  await page.mouse.move(x + 90, y - 45, { steps: 3 });
  await page.mouse.up();
  await expect(page.locator('[data-command=undo]')).toBeEnabled();
  await isCaughtUp(page);
});

test('figures of a moment ago are marked as such on the Light sheet', async ({ page }) => {
  await openPage(page);
  await sheet(page, 'Tree').click();
  await page.locator('.branches tbody button').nth(1).click();
  await page.getByLabel('Length').first().fill('150');
  await page.keyboard.press('Enter');
  await sheet(page, 'Light').click();
  await noteAges(page);
  await page.locator('[data-command=undo]').click();
  await expect.poll(() => agesSeen(page)).toContain('Grey: light of a moment ago');
  await isCaughtUp(page);
  await expect(page.locator('.state-words.is-stale')).toHaveCount(0);
});
