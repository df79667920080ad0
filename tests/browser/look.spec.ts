/** What can be looked at on the Light sheet: by keys, by taps and on the stage. */
import type { StageProbe } from '../../src/ui/scene/stageModel.ts';
import { expect, test } from './house.ts';
import {
  expectAccessible,
  lightIsDone,
  lookAt,
  openPage,
  openWithoutPicture,
  stageIsDrawn,
  strongColours,
} from './pageSteps.ts';

// Metric units, whatever the browser’s own language is.
test.use({ locale: 'en-GB' });

test('the shoots in deep shade are found at a glance, through all that stands before them', async ({
  page,
}) => {
  await openPage(page);
  await stageIsDrawn(page);
  await lightIsDone(page);
  const all = await strongColours(page);
  await page.getByRole('button', { name: 'Show them on the tree' }).click();
  await expect(page.getByRole('button', { name: /deep shade/ })).toHaveAttribute('aria-pressed', 'true');
  await expect(async () => {
    const { blue, yellow } = await strongColours(page);
    expect(yellow).toBeLessThan(all.yellow / 4);
    expect(blue).toBeGreaterThan(0.002);
  }).toPass();
  await page.getByRole('button', { name: 'Show the whole tree' }).click();
  await expect(async () => {
    expect((await strongColours(page)).yellow).toBeGreaterThan(0.9 * all.yellow);
  }).toPass();
});

/** How much of what the stage shows belongs to shoots that the strip has in the sun at the chosen time, 0 to 1. */
const sunlitShareOfPicture = () => {
  const probe = (window as Window & { boughlightStage?: StageProbe }).boughlightStage;
  const box = document.querySelector('.stage canvas')?.getBoundingClientRect();
  const step = Number(document.querySelector<HTMLInputElement>('.look input[type=range]')?.value);
  if (probe === undefined || box === undefined) return 0;
  const isLit = (row: Element): boolean =>
    [...row.querySelectorAll('path')].some((path) =>
      [...(path.getAttribute('d') ?? '').matchAll(/M(\d+) 0H(\d+)/g)].some(
        ([, from, to]) => Number(from) <= step && step < Number(to),
      ),
    );
  const lit = new Map(
    [...document.querySelectorAll('.strip tr[data-id]')].map((row) => [
      row.getAttribute('data-id') ?? '',
      isLit(row),
    ]),
  );
  const counts = { lit: 0, shaded: 0 };
  for (let y = 60; y < box.height - 60; y += 17) {
    for (let x = 20; x < box.width - 20; x += 19) {
      const isInSun = lit.get(probe.pick(x, y) ?? '');
      if (isInSun !== undefined) counts[isInSun ? 'lit' : 'shaded'] += 1;
    }
  }
  return counts.lit / (counts.lit + counts.shaded);
};

test('the eye in the sun sees what the strip of the day calls lit', async ({ page }) => {
  await openPage(page);
  await stageIsDrawn(page);
  await lookAt(page, 'Day');
  const slider = page.getByRole('slider', { name: /by the clock/ });
  await slider.focus();
  for (let i = 0; i < 3; i++) await slider.press('PageUp');
  const before = await page.evaluate(sunlitShareOfPicture);
  await page.getByRole('button', { name: 'See the tree from the sun' }).click();
  await expect(page.getByTestId('moment')).toContainText('From the sun');
  await expect.poll(() => page.evaluate(sunlitShareOfPicture)).toBeGreaterThan(0.95);
  expect(before).toBeLessThan(0.95);
});

test('a day is gone through by keys and by taps', async ({ page }) => {
  await openWithoutPicture(page);
  const shootCount = await page.locator('.shoots tr[data-id]').count();
  await lookAt(page, 'Day');
  const rows = page.locator('.strip tr[data-id]');
  await expect(rows).toHaveCount(shootCount);
  const hours = (await rows.locator('td.figure').allTextContents()).map((text) => Number.parseFloat(text));
  expect(hours).toEqual([...hours].sort((a, b) => a - b));
  expect(Math.max(...hours)).toBeLessThan(15.5);
  const slider = page.getByRole('slider', { name: /by the clock/ });
  const value = async () => Number(await slider.inputValue());
  const noon = await value();
  await slider.focus();
  await slider.press('ArrowRight');
  expect(await value()).toBe(noon + 1);
  await slider.press('PageDown');
  expect(await value()).toBe(noon - 5);
  const bar = rows.first().locator('.strip-cell');
  const box = await bar.boundingBox();
  await bar.click({ position: { x: (box?.width ?? 0) * 0.9, y: 6 } });
  expect(await value()).toBeGreaterThan(noon + 20);
  await rows.first().getByRole('button').click();
  await expect(page.locator('.strip-node').first()).toContainText('Node 1');
});

test('the sky from a node tells what stands before the sun', async ({ page }) => {
  await openWithoutPicture(page);
  await page.locator('.shoots tr[data-id] button').first().click();
  await page.locator('.node-button').nth(1).click();
  await expect(page.getByRole('img', { name: /The sky as seen from node 2/ })).toBeVisible();
  const table = page.getByRole('table', { name: 'What stands before the sun' });
  await expect(table).toContainText('Nothing: open sun');
  const first = await table.textContent();
  await page.getByRole('combobox', { name: 'Node' }).selectOption('1');
  await expect(page.getByRole('img', { name: /The sky as seen from node 1/ })).toBeVisible();
  expect(await table.textContent()).not.toBe(first);
  const picture = page.locator('.sky-picture svg');
  const box = await picture.boundingBox();
  await picture.click({ position: { x: (box?.width ?? 0) / 2, y: (box?.height ?? 0) / 2 } });
  await expect(page.getByText(/^There (stands|the sky is open)/)).toBeVisible();
});

test('a bar of the spread is tapped to find its shoots, and the bars hold every shoot once', async ({
  page,
}) => {
  await openWithoutPicture(page);
  const shootCount = await page.locator('.shoots tr[data-id]').count();
  await lookAt(page, 'Spread');
  for (const list of await page.locator('.bands').all()) {
    const counts = await list.locator('.band-count').allTextContents();
    expect(counts.reduce((sum, text) => sum + Number.parseInt(text, 10), 0)).toBe(shootCount);
  }
  const band = page.locator('.band:not(:disabled)').first();
  await band.click();
  await expect(band).toHaveAttribute('aria-pressed', 'true');
  await band.click();
  await expect(band).toHaveAttribute('aria-pressed', 'false');
});

test('the limits are the grower’s to set, are marked as changed and go back', async ({ page }) => {
  await openWithoutPicture(page);
  await lightIsDone(page);
  const classes = () => page.locator('.class-list').textContent();
  const before = await classes();
  await page.getByText('The limits of the classes').click();
  const limit = page.getByRole('textbox', { name: /^Fruiting light/ });
  await limit.fill('20');
  await limit.press('Enter');
  await expect(page.getByText('Changed from 27 %')).toBeVisible();
  await expect(page.locator('.class-list')).toContainText('under 10 %');
  await page.getByRole('button', { name: 'Back to 27 %' }).click();
  await expect(page.getByText('Changed from 27 %')).toHaveCount(0);
  await lightIsDone(page);
  expect(await classes()).toBe(before);
  await limit.fill('3');
  await limit.press('Enter');
  await expect(page.getByText(/That cannot be used/)).toBeVisible();
});

test('the hours of the day have their own light', async ({ page }) => {
  await openWithoutPicture(page);
  await lightIsDone(page);
  await page.getByRole('radio', { name: 'By hour of the day' }).check();
  const slider = page.getByRole('slider', { name: /Hour of the day/ });
  await slider.focus();
  await slider.press('ArrowRight');
  await slider.press('ArrowRight');
  await expect(page.getByTestId('headline')).toContainText(/from \d+ to \d+ h, sun time/);
  await expect(page.locator('.shoots tr[data-id]').first()).toContainText('±');
  await expect(page.locator('.shoots thead')).toContainText('mol m⁻² h⁻¹');
});

test('every way to look at the light can be read by everyone, in every theme', async ({ page }) => {
  await openWithoutPicture(page);
  await lightIsDone(page);
  await page.locator('.shoots tr[data-id] button').first().click();
  await page.getByText('The limits of the classes').click();
  for (const name of ['Day', 'Sky', 'Spread', 'Shoots'] as const) {
    await lookAt(page, name);
    for (const theme of ['paper', 'dusk', 'outdoors']) {
      await page.evaluate((to) => {
        document.documentElement.dataset['theme'] = to;
      }, theme);
      await expectAccessible(page, '.sheet-page');
    }
  }
});

test('a sheet is printed over its full length, without what can only be pressed', async ({ page }) => {
  await openWithoutPicture(page);
  await lookAt(page, 'Day');
  await page.emulateMedia({ media: 'print' });
  const last = page.locator('.strip tbody tr').last();
  const [sheetBox, rowBox] = [await page.locator('.sheet').boundingBox(), await last.boundingBox()];
  const end = (box: { y: number; height: number } | null): number => (box?.y ?? 0) + (box?.height ?? 0);
  expect(end(rowBox)).toBeGreaterThan(900);
  expect(end(sheetBox)).toBeGreaterThanOrEqual(end(rowBox));
  await expect(page.getByRole('button', { name: 'See the tree from the sun' })).toBeHidden();
  await expect(page.getByRole('tab', { name: 'Work' })).toBeHidden();
});
