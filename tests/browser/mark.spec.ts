/** Branches marked by a stroke on the stage; what is checked is the tree file. */
import type { Page } from '@playwright/test';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { stanceOf, treeOf } from '../../src/document/views.ts';
import { pointAt } from '../../src/geometry/path.ts';
import { placeTree } from '../../src/geometry/tree.ts';
import type { StageProbe } from '../../src/ui/scene/stageModel.ts';
import { expect, test } from './house.ts';
import { savedByKey } from './keySteps.ts';
import { expectAccessible, openPage, sheet, stageIsDrawn } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

/** Pixels of the page along a branch, from a tenth of its length to the end of `share`. */
async function along(page: Page, file: TreeFile, name: string, share: number) {
  const placed = [...placeTree(treeOf(file), stanceOf(file)).values()].find(({ axis }) => axis.name === name);
  if (placed === undefined) throw new Error(`along: there is no ${name}`);
  const points = [0.1, 0.4, 0.7, 1].map((t) => pointAt(placed.path, placed.lengthM * t * share));
  return page.evaluate((ats) => {
    const probe = (window as Window & { boughlightStage?: StageProbe }).boughlightStage;
    const box = document.querySelector('.stage canvas')?.getBoundingClientRect();
    return ats.map((at) => {
      const pixel = probe?.project(at) ?? null;
      if (pixel === null || box === undefined) throw new Error('along: the branch is not in the picture');
      return { x: box.x + pixel[0], y: box.y + pixel[1] };
    });
  }, points);
}

type Pixels = Awaited<ReturnType<typeof along>>;

async function sweepDown(page: Page, pixels: Pixels): Promise<void> {
  const [first, ...rest] = pixels;
  if (first === undefined) throw new Error('sweepDown: no way to go');
  await page.mouse.move(first.x, first.y);
  await page.mouse.down();
  for (const { x, y } of rest) await page.mouse.move(x, y, { steps: 4 });
}

test('a stroke marks what it goes over in one step, and Escape leaves no trace', async ({ page }) => {
  await openPage(page);
  await stageIsDrawn(page);
  await sheet(page, 'Tree').click();
  const before = await savedByKey(page);
  await page.getByRole('button', { name: 'Draw', exact: true }).click();
  await page.getByRole('button', { name: 'Mark', exact: true }).click();
  await page.getByRole('combobox', { name: 'Mark as' }).selectOption('carries figs');
  await expectAccessible(page, '.stage');
  const way = await along(page, before, 'South-east limb', 0.6);
  await sweepDown(page, way);
  await expect(page.locator('.marking')).toContainText(/\d+ branch(es)?: carries figs/);
  await page.keyboard.press('Escape');
  await expect(page.locator('.marking')).toHaveCount(0);
  await page.mouse.up();
  expect((await savedByKey(page)).axes.filter(({ bearsFigs }) => bearsFigs)).toEqual([]);
  await expect(page.locator('[data-command=undo]')).toBeDisabled();
  await sweepDown(page, way);
  await page.mouse.up();
  const marked = (await savedByKey(page)).axes.filter(({ bearsFigs }) => bearsFigs).map(({ name }) => name);
  expect(marked).toContain('South-east limb');
  await expect(page.locator('.branches')).toContainText('carries figs');
  await page.locator('[data-command=undo]').click();
  expect((await savedByKey(page)).axes.filter(({ bearsFigs }) => bearsFigs)).toEqual([]);
  await expect(page.locator('[data-command=undo]')).toBeDisabled();
});
