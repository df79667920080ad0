/** A limb pulled with a finger, with a second finger that spoils it, and typed in with a thumb. */
import type { CDPSession, Page } from '@playwright/test';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { branchFigures } from '../../src/editor/figures.ts';
import { turnDeg } from '../../src/geometry/world.ts';
import { expect, test } from './house.ts';
import { savedByKey } from './keySteps.ts';
import { expectAccessible, openPage, sheet, stageIsDrawn } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

const limb = 'South-east limb';

const limbIn = (file: TreeFile) => {
  const axis = file.axes.find(({ name }) => name === limb);
  if (axis === undefined) throw new Error(`no ${limb}`);
  return axis;
};

type Finger = readonly [x: number, y: number, id: number];

const touch = (cdp: CDPSession, type: 'touchStart' | 'touchMove' | 'touchEnd', fingers: readonly Finger[]) =>
  cdp.send('Input.dispatchTouchEvent', { type, touchPoints: fingers.map(([x, y, id]) => ({ x, y, id })) });

async function beginDrawing(page: Page): Promise<void> {
  await openPage(page);
  await sheet(page, 'Tree').tap();
  await stageIsDrawn(page);
  await page.getByRole('button', { name: new RegExp(`^${limb} \\d`) }).tap();
  await page.locator('[data-command=from-south]').tap();
  await page.locator('[data-command=draw]').tap();
  await expect(page.getByTestId('view-seen')).toHaveText('From the south, east on the right');
  await expect(tip(page)).toBeVisible();
}

const tip = (page: Page) => page.locator('[data-handle="tip-0"]');

async function middleOf(page: Page): Promise<readonly [number, number]> {
  const box = await tip(page).boundingBox();
  if (box === null) throw new Error('middleOf: the tip is not in the picture');
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
  return [box.x + box.width / 2, box.y + box.height / 2];
}

test('a finger pulls the tip in the plane of the view, and a second finger leaves no trace of it', async ({
  page,
}) => {
  await beginDrawing(page);
  const cdp = await page.context().newCDPSession(page);
  const before = await savedByKey(page);
  const [x, y] = await middleOf(page);
  await touch(cdp, 'touchStart', [[x, y, 0]]);
  await touch(cdp, 'touchMove', [[x - 30, y + 20, 0]]);
  await touch(cdp, 'touchStart', [
    [x - 30, y + 20, 0],
    [x - 120, y + 90, 1],
  ]);
  await touch(cdp, 'touchMove', [
    [x - 60, y + 20, 0],
    [x - 90, y + 60, 1],
  ]);
  await touch(cdp, 'touchEnd', []);
  expect(await savedByKey(page)).toEqual(before);
  await expect(page.locator('[data-command=undo]')).toBeDisabled();

  await page.locator('[data-command=from-south]').tap();
  await expect(page.getByTestId('view-seen')).toHaveText('From the south, east on the right');
  const [fromX, fromY] = await middleOf(page);
  await touch(cdp, 'touchStart', [[fromX, fromY, 0]]);
  await touch(cdp, 'touchMove', [[fromX - 15, fromY + 9, 0]]);
  await touch(cdp, 'touchMove', [[fromX - 40, fromY + 27, 0]]);
  await touch(cdp, 'touchEnd', []);
  await expect(page.locator('[data-command=undo]')).toBeEnabled();
  const after = await savedByKey(page);
  expect(limbIn(after).path.map(([, , z]) => z)).toEqual(limbIn(before).path.map(([, , z]) => z));
  expect(limbIn(after).path.at(-1)?.[0]).toBeLessThan((limbIn(before).path.at(-1)?.[0] ?? 0) - 0.05);
  await page.locator('[data-command=undo]').tap();
  expect(await savedByKey(page)).toEqual(before);
});

test('the figures are typed and locked with a thumb, and hold in the next pull', async ({ page }) => {
  await beginDrawing(page);
  await page.locator('.live-figures').tap();
  await expectAccessible(page, '.handles');
  const label = page.getByRole('group', { name: `Figures of ${limb}` });
  await label.getByRole('textbox', { name: /^Length/ }).fill('74,5');
  await page.keyboard.press('Enter');
  const lock = label.getByRole('button', { name: 'Lock the length' });
  const box = await lock.boundingBox();
  expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
  await lock.tap();
  await expect(lock).toHaveAttribute('aria-pressed', 'true');
  await label.getByRole('button', { name: 'Close' }).tap();
  const cdp = await page.context().newCDPSession(page);
  const [x, y] = await middleOf(page);
  await touch(cdp, 'touchStart', [[x, y, 0]]);
  await touch(cdp, 'touchMove', [[x - 40, y - 10, 0]]);
  await touch(cdp, 'touchMove', [[x - 70, y - 30, 0]]);
  await touch(cdp, 'touchEnd', []);
  const figures = branchFigures(limbIn(await savedByKey(page)));
  expect(figures.lengthM).toBeCloseTo(0.745, 3);
  expect(Math.abs(turnDeg(figures.fromUprightDeg, 48.7))).toBeGreaterThan(5);
});

test('all six views are within the reach of one tap of 44 pixels', async ({ page }) => {
  await openPage(page);
  for (const button of await page.locator('.views button').all()) {
    const box = await button.boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
    await button.tap();
    await expect(button).toHaveAttribute('aria-pressed', 'true');
  }
});
