/** The page on a laptop: what a grower does, from the first look to the saved file. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { writeTreeFile } from '../../src/document/writeTreeFile.ts';
import { expect, test } from './house.ts';
import {
  expectAccessible,
  lightIsDone,
  openPage,
  openWithoutPicture,
  saysOutOfDateAtOnce,
  sheet,
  shootOnStage,
  stageIsDrawn,
  strongColours,
  workIsDone,
} from './pageSteps.ts';

const sampleText = readFileSync(
  join(import.meta.dirname, '../../public/examples/potted-fig-in-leaf.json'),
  'utf8',
);

// Metric units, whatever the browser's own language is.
test.use({ locale: 'en-GB' });

test('the page opens on a tree whose leaves carry the colours of their light', async ({ page }) => {
  await openPage(page);
  await stageIsDrawn(page);
  await lightIsDone(page);
  await expect(async () => {
    const { blue, yellow } = await strongColours(page);
    expect(blue).toBeGreaterThan(0.005);
    expect(yellow).toBeGreaterThan(0.005);
  }).toPass();
  const rows = page.locator('.shoots tbody tr[data-id]');
  await expect(rows.first()).toContainText(/\d+ % ± [\d.]+/);
  const shares = await rows.locator('td:nth-child(2) strong').allTextContents();
  expect(shares.map(Number)).toEqual(shares.map(Number).sort((a, b) => a - b));
});

test('a shoot chosen on the stage is chosen in the tables, and the other way round', async ({ page }) => {
  await openPage(page);
  await stageIsDrawn(page);
  const target = await shootOnStage(page);
  await page.mouse.click(target.x, target.y);
  const row = page.locator(`.shoots tr[data-id="${target.id}"]`);
  await expect(row).toHaveClass(/is-selected/);
  await expect(row).toBeInViewport();
  const other = page.locator('.shoots tbody tr[data-id]:not(.is-selected)').first();
  const otherId = await other.getAttribute('data-id');
  await other.getByRole('button').click();
  await expect(row).not.toHaveClass(/is-selected/);
  await sheet(page, 'Tree').click();
  await expect(page.locator('.branches tbody.is-selected')).toHaveAttribute('data-id', otherId ?? '');
  await page.locator('body').press('Escape');
  await expect(page.locator('.branches tbody.is-selected')).toHaveCount(0);
});

test('the month slider answers to keys and changes the figures', async ({ page }) => {
  await openWithoutPicture(page);
  await lightIsDone(page);
  const figures = () => page.locator('.shoots tbody tr[data-id]').allTextContents();
  const season = await figures();
  const slider = page.getByRole('slider', { name: /Month/ });
  await slider.focus();
  await slider.press('End');
  await expect(page.getByTestId('headline')).toContainText(/ in (September|October)/);
  expect(await figures()).not.toEqual(season);
  // The doubt of the month follows when its rays are weighed.
  await expect(page.locator('.shoots tbody tr[data-id]').first()).toContainText('±');
  await slider.press('Home');
  await expect(page.getByTestId('headline')).toContainText('over the season');
  expect(await figures()).toEqual(season);
});

test('ticks re-score the tree at once, and all unticked is doing nothing', async ({ page }) => {
  test.setTimeout(120_000);
  await openWithoutPicture(page);
  await sheet(page, 'Work').click();
  const headline = page.getByTestId('work-headline');
  await workIsDone(page);
  for (const words of ['sap', 'sharp tools', 'estimate']) {
    await expect(page.locator('.cautions summary')).toContainText(words);
  }
  await page.getByText('Doing nothing and the cuts, in figures').click();
  const ripe = page.getByTestId('ripe-ticked');
  await expect(ripe).toHaveText(/\d/);
  const all = await ripe.textContent();
  const first = page.locator('.cut').first();
  await first.getByRole('checkbox').uncheck();
  await expect(ripe).not.toHaveText(all ?? '');
  await first.getByRole('checkbox').check();
  await expect(ripe).toHaveText(all ?? '');
  await page.getByRole('button', { name: 'Untick all' }).click();
  await expect(headline).toContainText('Do nothing');
  await first.locator('.cut-open').click();
  await first.getByRole('button', { name: 'Show on the tree' }).click();
  await expect(first).toHaveClass(/is-selected/);
  await expectAccessible(page);
});

test('a branch is added by numbers, and the light follows', async ({ page }) => {
  await openWithoutPicture(page);
  await lightIsDone(page);
  const before = await page.locator('.shoots tbody tr[data-id]').count();
  await sheet(page, 'Tree').click();
  await page.getByRole('button', { name: 'South-east limb', exact: false }).first().click();
  await page.getByRole('button', { name: /^Add a branch on/ }).click();
  const form = page.getByRole('region', { name: /^New branch on/ });
  await form.getByRole('textbox', { name: 'Name' }).fill('Test shoot');
  await form.getByLabel('Kind').selectOption({ label: 'shoot' });
  await form.getByRole('textbox', { name: /^Length/ }).fill('31,5');
  await form.getByRole('textbox', { name: /^Leaves/ }).fill('9');
  await form.getByRole('button', { name: 'Add it' }).click();
  const added = page.locator('.branches tbody.is-selected');
  await expect(added).toContainText('Test shoot');
  await expect(added.locator('.branch-figures')).toContainText('32 cm');
  await sheet(page, 'Light').click();
  await expect(page.locator('.shoots tbody tr[data-id]')).toHaveCount(before + 1);
  await lightIsDone(page);
  expect(await saysOutOfDateAtOnce(page, 'undo')).toBe(true);
  await expect(page.locator('.shoots tbody tr[data-id]')).toHaveCount(before);
});

test('a branch is moved and deleted, undone, done again and kept', async ({ page }) => {
  await openWithoutPicture(page);
  await sheet(page, 'Tree').click();
  const branches = page.locator('.branches');
  const name = 'South-east limb, lateral 1';
  await page.getByRole('button', { name: new RegExp(`^${name} \\d`) }).click();
  const chosen = page.locator('.branches tbody.is-selected');
  await chosen.getByRole('textbox', { name: /^Along it/ }).fill('12');
  await chosen.getByRole('textbox', { name: /^Along it/ }).press('Enter');
  await expect(chosen).toContainText('12 cm along');
  await chosen
    .getByRole('button', { name: new RegExp(`^Delete ${name} and the \\d+ branches on it`) })
    .click();
  await expect(branches).not.toContainText(name);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(branches).toContainText(name);
  await page.locator('body').press('Control+z');
  await expect(branches).not.toContainText('12 cm along South-east limb');
  await page.locator('body').press('Control+Shift+z');
  await expect(branches).toContainText('12 cm along South-east limb');
  await expect(page.locator('.kept')).toContainText('Kept on this device');
  await page.reload();
  await expect(page.locator('.branches')).toContainText('12 cm along South-east limb');
});

test('a bad file is refused in words, and a saved file holds the same tree', async ({ page }) => {
  await openWithoutPicture(page);
  const picker = page.locator('input[type=file]');
  const bad = sampleText.replace(/"latitudeDeg": [\d.]+/, '"latitudeDeg": 147.13');
  expect(bad === sampleText).toBe(false);
  await picker.setInputFiles({ name: 'bad.json', mimeType: 'application/json', buffer: Buffer.from(bad) });
  await expect(page.getByRole('alert').filter({ hasText: 'bad.json was not opened' })).toContainText(
    'latitudeDeg',
  );
  await page.getByRole('button', { name: 'Close this message' }).click();
  const saving = page.waitForEvent('download');
  await page.locator('body').press('Control+s');
  const saved = readFileSync(await (await saving).path(), 'utf8');
  const parsed = parseTreeFile(sampleText);
  if (!parsed.ok) throw new Error(parsed.reason);
  expect(saved).toBe(writeTreeFile(parsed.file));
  await picker.setInputFiles({
    name: 'again.json',
    mimeType: 'application/json',
    buffer: Buffer.from(saved),
  });
  await expect(page.getByRole('status').filter({ hasText: 'Opened' })).toBeVisible();
});

test('every sheet in every theme can be read by everyone', async ({ page }) => {
  await openWithoutPicture(page);
  for (const theme of ['Paper', 'Dusk', 'Outdoors']) {
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('radio', { name: theme }).check();
    await expectAccessible(page);
    await page.locator('body').press('Escape');
    for (const name of ['Place', 'Tree', 'Light'] as const) {
      await sheet(page, name).click();
      await expectAccessible(page);
    }
  }
});
