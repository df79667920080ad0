/** The Place sheet on a laptop: the place from above, what stands there, and the weather. */
import type { Page } from '@playwright/test';
import { madeEpw } from '../season/epw/madeEpw.ts';
import { expect, test } from './house.ts';
import { expectAccessible, lightIsDone, openWithoutPicture, sheet } from './pageSteps.ts';

const weatherText = madeEpw({ latitudeDeg: 46.1, longitudeDeg: 8.9, zoneH: 1, years: [2003] }).text;

test.use({ locale: 'en-GB' });

const list = (page: Page) => page.locator('.round-list');
const lightNow = (page: Page) => page.getByTestId('light-now');

/** Drags from the middle of something by so many pixels. */
async function dragBy(page: Page, what: ReturnType<Page['locator']>, dx: number, dy: number): Promise<void> {
  const box = await what.boundingBox();
  if (box === null) throw new Error('dragBy: there is nothing to drag');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2);
  await page.mouse.move(x + dx, y + dy);
}

test('a fence is added, dragged, moved by keys, typed and taken away, and the light follows', async ({
  page,
}) => {
  await openWithoutPicture(page);
  await lightIsDone(page);
  await sheet(page, 'Place').click();
  const open = await lightNow(page).textContent();
  await page.getByRole('button', { name: 'Add a fence' }).click();
  await expect(list(page)).toContainText(/New fence fence, 1\.99 m to the west/);
  const fence = page.locator('.plan-thing.is-fence');
  await dragBy(page, fence, 30, 0);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(list(page)).toContainText('1.99 m to the west');
  await dragBy(page, fence, 30, 0);
  await page.mouse.up();
  await expect(list(page)).not.toContainText('1.99 m to the west');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(list(page)).toContainText('1.99 m to the west');
  await fence.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(list(page)).toContainText('1.44 m to the west');
  const form = page.getByRole('group', { name: 'New fence' });
  await form.getByRole('textbox', { name: /^Height/ }).fill('2,8');
  await form.getByRole('textbox', { name: /^Open share/ }).fill('0');
  await form.getByRole('textbox', { name: /^Open share/ }).press('Enter');
  await expect(lightNow(page)).not.toContainText('anew');
  await expect(lightNow(page)).not.toHaveText(open ?? '');
  await fence.focus();
  await page.keyboard.press('Delete');
  await expect(list(page)).not.toContainText('New fence');
});

test('pot, slope, net and skyline are entered, and all of it can be read by everyone', async ({ page }) => {
  await openWithoutPicture(page);
  await sheet(page, 'Place').click();
  await page.getByRole('button', { name: /^The tree in a pot/ }).click();
  await page.getByLabel('As it grows it is').selectOption({ label: 'given quarter turns' });
  await expect(list(page)).toContainText('a quarter turn every 2 weeks');
  await page.getByText(/^Ground:/).click();
  await page.getByLabel('It is', { exact: true }).selectOption({ label: 'on a slope' });
  await expect(page.getByText('Ground: falls 8° to the south')).toBeVisible();
  await page.getByText(/^Film or net/).click();
  await page.getByLabel('Above the tree').selectOption({ label: 'a net' });
  await page.getByText(/^Skyline:/).click();
  await page.getByRole('button', { name: 'Enter a skyline' }).click();
  const knob = page.getByRole('button', { name: 'Skyline at 90 degrees, 10 degrees high' });
  await knob.focus();
  await page.keyboard.press('Shift+ArrowUp');
  await expect(page.getByRole('button', { name: 'Skyline at 90 degrees, 20 degrees high' })).toBeVisible();
  await page.getByRole('button', { name: 'Add a point' }).click();
  await expect(page.getByText('Skyline: 5 points measured')).toBeVisible();
  await expectAccessible(page);
});

test('the weather is typed, pasted and told where it is from', async ({ page }) => {
  await openWithoutPicture(page);
  await sheet(page, 'Place').click();
  await page.getByText('Change the weather').click();
  const weather = page.locator('section').filter({ hasText: 'Weather in a normal year' });
  await page.getByLabel(/No figures/).selectOption({ label: 'Dry summers, mild winters' });
  await expect(weather).toContainText('A guess');
  const july = page.getByRole('textbox', { name: /^Day and night, July/ });
  await july.fill('22,4');
  await july.press('Enter');
  await expect(july).toHaveValue('22.4');
  await expect(weather).toContainText('Typed in');
  const january = page.getByRole('textbox', { name: /^Sunshine, January/ });
  await january.evaluate((element) => {
    const data = new DataTransfer();
    data.setData('text', '1,9\t3\t4,1\t5,5\t6,8\t7,2\t8,1\t7,7\t5,6\t3,4\t2,2\t1,6');
    element.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
    );
  });
  await expect(january).toHaveValue('1.9');
  await expect(page.getByRole('textbox', { name: /^Sunshine, August/ })).toHaveValue('7.7');
  await page.getByLabel('Weather file').setInputFiles({
    name: 'wrong.epw',
    mimeType: 'text/plain',
    buffer: Buffer.from('no weather at all'),
  });
  await expect(page.getByRole('alert').filter({ hasText: 'wrong.epw was not taken' })).toBeVisible();
  await page.getByRole('button', { name: 'Close this message' }).click();
  await page.getByLabel('Weather file').setInputFiles({
    name: 'valley.epw',
    mimeType: 'text/plain',
    buffer: Buffer.from(weatherText),
  });
  await expect(weather).toContainText('Weather file Low, and green, Made Up');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(weather).toContainText('Typed in');
  await page.getByLabel('Frost', { exact: true }).selectOption({ label: 'no frost here' });
  await expect(weather).toContainText('It does not freeze here');
  await page.getByLabel('The sun is told by').selectOption({ label: 'clearness' });
  await expect(page.getByRole('textbox', { name: /^Clearness, August/ })).toHaveValue(/^0\.5/);
  await page.getByLabel('Clock').selectOption('Asia/Tokyo');
  await expectAccessible(page);
});
