/** The Work sheet on a laptop: what is marked, chosen and read there. */
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
    .getByRole('button', { name: 'South-east limb, lateral 1 lateral', exact: false })
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
