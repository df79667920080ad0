/** The Work sheet on a laptop: what is marked, chosen and read there. */
import { readFileSync } from 'node:fs';
import { expect, test } from './house.ts';
import {
  expectAccessible,
  openPage,
  openSample,
  openWithoutPicture,
  sheet,
  workIsDone,
} from './pageSteps.ts';

// Metric units, whatever the browser's own language is.
test.use({ locale: 'en-GB' });
// Most of these wait for more than one list.
test.setTimeout(180_000);

test('a bud is marked to stay in the list: the plan obeys, undo takes it back', async ({ page }) => {
  await openWithoutPicture(page);
  await openSample(page, 'Potted fig at bud break');
  await sheet(page, 'Work').click();
  await workIsDone(page);
  const cut = page.locator('.cut').first();
  const id = (await cut.getAttribute('data-id')) ?? '';
  await cut.locator('.cut-open').click();
  await cut.getByRole('button', { name: 'Keep it' }).click();
  await workIsDone(page);
  await expect(page.locator(`.cut[data-id="${id}"]`)).toHaveCount(0);
  await page.getByText('1 mark', { exact: true }).click();
  await expect(page.locator('.pin-row')).toContainText(/Keep: Bud .* out on South-east limb/);
  await page.getByRole('button', { name: 'Undo' }).click();
  await workIsDone(page);
  await expect(page.locator('.pin-row')).toHaveCount(0);
  await expect(page.locator(`.cut[data-id="${id}"]`)).toHaveCount(1);
});

test('a shoot that would stay is marked to go, and the mark is taken back from the list of marks', async ({
  page,
}) => {
  await openWithoutPicture(page);
  await sheet(page, 'Tree').click();
  await page
    .getByRole('button', { name: /^South-east limb, lateral 1 \d/ })
    .first()
    .click();
  await sheet(page, 'Work').click();
  await workIsDone(page);
  const picked = page.getByRole('group', { name: 'Picked: South-east limb, lateral 1' });
  await picked.getByRole('button', { name: 'Take it off' }).click();
  await workIsDone(page);
  const first = page.locator('.cut-group').first();
  await expect(first).toContainText('You marked these');
  await expect(first.locator('.cut')).toHaveCount(1);
  await page.getByText('1 mark', { exact: true }).click();
  await expectAccessible(page);
  await page.getByRole('button', { name: /^Leave it to the plan.*South-east limb, lateral 1$/ }).click();
  await workIsDone(page);
  await expect(page.getByText('You marked these')).toHaveCount(0);
});

test('gentle, balanced and bold are picked by key, and the curve is read point by point', async ({
  page,
}) => {
  await openWithoutPicture(page);
  await sheet(page, 'Work').click();
  await workIsDone(page);
  await page.locator('.folds.is-row summary').first().click();
  const bold = page.getByRole('radio', { name: /^Bold \d+$/ });
  await page.getByRole('radio', { name: /^Balanced/ }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(bold).toBeChecked();
  await workIsDone(page);
  await expect(page.locator('.folds.is-row summary').first()).toContainText('bold');
  const shoots = Number((await bold.locator('..').textContent())?.replace(/\D/g, ''));
  const read = page.locator('.choice-read');
  await expect(read).toContainText(`${shoots} shoots kept`);
  const slider = page.getByRole('slider', { name: 'Read the curve' });
  await slider.focus();
  await slider.press('ArrowRight');
  await expect(read).toContainText(`${shoots + 1} shoots kept`);
  await page.getByText('The curve as a table').click();
  const rows = page.getByRole('table', { name: 'The curve as a table' }).locator('tbody tr');
  const told = await rows.first().locator('td').allTextContents();
  await slider.press('Home');
  for (const figure of told.slice(0, 3)) await expect(read).toContainText(figure);
  await expectAccessible(page);
});

test('what was marked is seen on the stage, and a tap there picks a shoot to mark', async ({ page }) => {
  await openPage(page);
  await sheet(page, 'Work').click();
  await workIsDone(page);
  const canvas = page.locator('.stage canvas');
  const box = await canvas.boundingBox();
  if (box === null) throw new Error('there is no stage');
  const picked = page.getByRole('group', { name: /^Picked: / });
  // The trunk stands in the middle, whatever is before it is picked instead: some wood or leaf is there.
  await expect(async () => {
    await canvas.click({ position: { x: box.width * 0.5, y: box.height * 0.45 } });
    await expect(picked).toBeVisible({ timeout: 2000 });
  }).toPass();
  const keep = picked.getByRole('button', { name: 'Keep it' });
  await keep.click();
  await expect(keep).toHaveAttribute('aria-pressed', 'true');
  await workIsDone(page);
  await keep.click();
  await expect(keep).toHaveAttribute('aria-pressed', 'false');
});

test('the whole list is worked through by keys, and the place in it is not lost', async ({ page }) => {
  await openWithoutPicture(page);
  await sheet(page, 'Light').focus();
  await page.keyboard.press('ArrowRight');
  await workIsDone(page);
  const focused = page.locator(':focus');
  const tabTo = async (what: string) => {
    for (let i = 0; i < 25; i++) {
      if (await focused.evaluate((element, sign) => element.matches(sign), what)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`tabTo: ${what} was not reached`);
  };
  await tabTo('.cut input');
  await page.keyboard.press('Space');
  await expect(page.locator('.cut input').first()).not.toBeChecked();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.locator('.cut').first()).toHaveClass(/is-selected/);
  await tabTo('.cut .is-pin');
  await page.keyboard.press('Enter');
  await workIsDone(page);
  await expect(page.getByText('1 mark', { exact: true })).toBeVisible();
  await expect(focused).toHaveText(/The \d+ cuts|Keep it/);
  await page.keyboard.press('Escape');
  await expect(page.locator('.cut.is-selected')).toHaveCount(0);
});

test('a list that the tree has outgrown is greyed at once, and its work can be stopped', async ({ page }) => {
  await openWithoutPicture(page);
  await sheet(page, 'Tree').click();
  await page.getByRole('button', { name: /^South-east limb, lateral 1 \d/ }).click();
  const length = page.locator('.branches tbody.is-selected').getByRole('textbox', { name: /^Length/ });
  await length.fill('31');
  await length.press('Enter');
  await sheet(page, 'Work').click();
  await workIsDone(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.locator('.cut-list.is-stale')).toHaveCount(1);
  await expect(page.locator('.cut input').first()).toBeDisabled();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByTestId('work-state')).toContainText('This list is the old one.');
  await page.getByRole('button', { name: 'Plan again' }).click();
  await workIsDone(page);
  await expect(page.locator('.cut input').first()).toBeEnabled();
});

test('the list is taken along: on paper, as a table and as days, of the ticked cuts', async ({ page }) => {
  await openWithoutPicture(page);
  await sheet(page, 'Work').click();
  await workIsDone(page);
  const advised = page.locator('.cut-group:not(.your-call) .cut');
  const count = await advised.count();
  await advised.first().getByRole('checkbox').uncheck();
  await workIsDone(page);
  const saved = async (name: string) => {
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name }).click();
    return readFileSync(await (await saving).path(), 'utf8');
  };
  const table = await saved('Save as a table (CSV)');
  const rows = table.trimEnd().split('\r\n');
  expect(rows).toHaveLength(1 + (await page.locator('.cut').count()));
  expect(rows.filter((row) => row.startsWith('1,"no",'))).toHaveLength(1);
  expect(rows.filter((row) => /^\d+,"yes",/.test(row))).toHaveLength(count - 1);
  const days = await saved('Save the days (calendar)');
  expect(days.match(/^BEGIN:VEVENT\r$/gm)?.length).toBeGreaterThan(0);
  expect(days).not.toContain('NaN');
  await page.emulateMedia({ media: 'print' });
  const paper = page.locator('.paper');
  await expect(paper).toBeVisible();
  await expect(page.locator('.cut-list')).toBeHidden();
  const boxes = await paper.locator('.paper-box').allTextContents();
  expect(boxes).toHaveLength(count - 1);
  for (const drawing of await paper.locator('svg').all()) {
    const tags = await drawing.locator('.paper-tag text').allTextContents();
    expect(tags.map((tag) => `□ ${tag}`)).toEqual(boxes);
  }
  for (const words of ['Fig sap irritates', 'sharp, clean tools', 'cannot be undone']) {
    await expect(paper.locator('.paper-cautions')).toContainText(words);
  }
});

test('all that stands behind the list can be read by everyone, in every theme', async ({ page }) => {
  await openWithoutPicture(page);
  await openSample(page, 'Old fig');
  await sheet(page, 'Work').click();
  await workIsDone(page);
  await page.getByText('Renew an old tree').click();
  await page.getByRole('button', { name: 'Work out the ways to renew it' }).click();
  await expect(page.locator('.renewal-way').first()).toContainText('Year 1');
  await workIsDone(page);
  for (const fold of await page.locator('.folds > details').all()) {
    if ((await fold.getAttribute('open')) === null) await fold.locator('> summary').click();
  }
  await expect(page.locator('.amounts')).toContainText('at most 33 % in a year');
  await page.locator('.cut-open').first().click();
  await page.locator('.stay .row-button').first().scrollIntoViewIfNeeded();
  for (const theme of ['paper', 'dusk', 'outdoors']) {
    await page.evaluate((to) => {
      document.documentElement.dataset['theme'] = to;
    }, theme);
    await expectAccessible(page, '.sheet-page');
  }
});
