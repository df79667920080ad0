/** The place from above under a thumb. */
import type { CDPSession, Page } from '@playwright/test';
import { expect, test } from './house.ts';
import { expectAccessible, openWithoutPicture, sheet } from './pageSteps.ts';

test.use({ locale: 'en-US' });

type Spot = readonly [x: number, y: number];

const touch = (
  session: CDPSession,
  type: 'touchStart' | 'touchMove' | 'touchEnd',
  fingers: readonly Spot[],
): Promise<unknown> =>
  session.send('Input.dispatchTouchEvent', {
    type,
    touchPoints: fingers.map(([x, y], id) => ({ x, y, id })),
  });

async function middleOf(page: Page, selector: string): Promise<Spot> {
  const box = await page.locator(selector).boundingBox();
  if (box === null) throw new Error(`middleOf: ${selector} is not on the page`);
  return [box.x + box.width / 2, box.y + box.height / 2];
}

test('a thumb picks a wall and drags it; a scroll or a second finger moves nothing', async ({ page }) => {
  await openWithoutPicture(page);
  await sheet(page, 'Place').click();
  await page.getByRole('button', { name: 'Raise the sheet' }).click();
  await page.locator('.plan').first().scrollIntoViewIfNeeded();
  const session = await page.context().newCDPSession(page);
  const wall = '.plan-thing.is-wall';
  const before = await page.locator('.round-list').textContent();
  const swipe = async (by: Spot, second: boolean) => {
    const [x, y] = await middleOf(page, wall);
    await touch(session, 'touchStart', [[x, y]]);
    const half: Spot = [x + by[0] / 2, y + by[1] / 2];
    await touch(session, 'touchMove', [half]);
    if (second) await touch(session, 'touchStart', [half, [x + 90, y + 90]]);
    await touch(
      session,
      'touchMove',
      second
        ? [
            [x + by[0], y + by[1]],
            [x + 90, y + 90],
          ]
        : [[x + by[0], y + by[1]]],
    );
    await touch(session, 'touchEnd', []);
  };
  // Not picked yet: the sheet scrolls, the wall stays.
  await swipe([0, -60], false);
  await expect(page.locator('.round-list')).toHaveText(before ?? '');
  await page.locator('.plan').first().scrollIntoViewIfNeeded();
  await page.touchscreen.tap(...(await middleOf(page, wall)));
  await expect(page.locator(wall)).toHaveAttribute('aria-pressed', 'true');
  await swipe([0, 40], true);
  await expect(page.locator('.round-list')).toHaveText(before ?? '');
  await swipe([0, -40], false);
  await expect(page.locator('.round-list')).not.toHaveText(before ?? '');
  await page.getByRole('button', { name: 'Lower the sheet' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.locator('.round-list')).toHaveText(before ?? '');
  await expectAccessible(page);
});
