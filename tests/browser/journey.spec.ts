/** The whole way by keys alone: a form, three shoots as measured, their light, the list, one cut overruled, the file. */
import { branchFigures } from '../../src/editor/figures.ts';
import { expect, test } from './house.ts';
import { focusedCell, keyTo, savedByKey, tabTo } from './keySteps.ts';
import { lightIsDone, openWithoutPicture, workIsDone } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

const measured = [
  { length: '37,5', lengthM: 0.375, leaves: '11' },
  { length: '0.29 m', lengthM: 0.29, leaves: '8' },
  { length: '18', lengthM: 0.18, leaves: '6' },
] as const;

test('a tree goes from a form to a list and a file with no hand on the mouse', async ({ page }) => {
  test.setTimeout(180_000);
  page.setDefaultTimeout(20_000);
  await openWithoutPicture(page);
  // Nothing that a mouse does may help.
  await page.mouse.move(0, 0);

  await page.keyboard.press('F3');
  await tabTo(page, page.getByRole('button', { name: 'Start from a form' }));
  await page.keyboard.press('Enter');
  await tabTo(page, page.getByRole('radio', { name: /^Single stem/ }));
  await keyTo(page, 'ArrowLeft', page.getByRole('radio', { name: /^Open vase/ }));
  const slider = page.getByRole('slider', { name: 'Shoots on the tree' });
  await tabTo(page, slider);
  await page.keyboard.press('Home');
  for (let n = 0; n < 12; n++) await page.keyboard.press('ArrowRight');
  const count = Number(await slider.inputValue());
  await tabTo(page, page.getByRole('button', { name: 'Take this tree' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Open vase');
  // The page of the form is gone; the keys go on in what came in its place.
  await expect(page.locator('.sheet-page')).toBeFocused();

  await tabTo(page, page.getByRole('radio', { name: 'List' }));
  await page.keyboard.press('ArrowRight');
  await tabTo(page, page.locator('.grid-cell'));
  const ids: string[] = [];
  const isShoot = () => page.locator('[aria-selected=true] [data-column=kind]').textContent();
  while ((await focusedCell(page)).column !== 'length') await page.keyboard.press('ArrowRight');
  for (const { length, leaves } of measured) {
    do await page.keyboard.press('ArrowDown');
    while ((await isShoot()) !== 'shoot');
    const at = await focusedCell(page);
    ids.push(at.id);
    await page.keyboard.type(length);
    await page.keyboard.press('Enter');
    await keyTo(page, 'ArrowRight', page.locator('[aria-selected=true] [data-column=leaves]'));
    await page.keyboard.type(leaves);
    await page.keyboard.press('Enter');
    await expect(page.locator('[aria-selected=true] [data-column=leavesFrom]')).toHaveText('counted');
    await keyTo(page, 'ArrowLeft', page.locator('[aria-selected=true] [data-column=length]'));
  }

  await page.keyboard.press('F4');
  await expect(page.getByRole('tab', { name: 'Light' })).toHaveAttribute('aria-selected', 'true');
  await lightIsDone(page);
  await tabTo(page, page.locator('.shoots tr[data-id] button').first());
  await page.keyboard.press('Enter');
  await expect(page.locator('.detail')).toBeVisible();

  await page.keyboard.press('F8');
  await workIsDone(page);
  const cut = page.locator('.cut').first();
  const id = (await cut.getAttribute('data-id')) ?? '';
  const tick = cut.getByRole('checkbox');
  const wasTicked = await tick.isChecked();
  await tabTo(page, tick);
  await page.keyboard.press('Space');
  await expect(tick).toBeChecked({ checked: !wasTicked });
  await tabTo(page, cut.locator('.cut-open'));
  await page.keyboard.press('Enter');
  const target = page.locator('.cut.is-selected');
  await tabTo(page, target.getByRole('button', { name: 'Keep it' }));
  await page.keyboard.press('Enter');
  await workIsDone(page);
  await expect(page.locator(`.cut[data-id="${id}"]`)).toHaveCount(0);

  const { axes } = await savedByKey(page);
  const shoots = axes.filter(({ kind }) => kind === 'shoot');
  expect(shoots).toHaveLength(count);
  measured.forEach(({ lengthM, leaves }, i) => {
    const axis = axes.find((one) => one.id === ids[i]);
    if (axis === undefined) throw new Error('a shoot is missing in the file');
    expect(branchFigures(axis).lengthM).toBeCloseTo(lengthM, 3);
    expect(axis.foliage).toMatchObject({
      count: Number(leaves),
      source: 'measured',
      midribSource: 'estimated',
    });
  });
  expect(shoots.filter(({ foliage }) => foliage?.source === 'measured')).toHaveLength(3);
  expect(axes.filter(({ pin }) => pin === 'keep')).toHaveLength(1);
});
