/** A limb drawn with the mouse from the front and from the side; what is checked is the tree file. */
import { stanceOf } from '../../src/document/views.ts';
import { type Path, pathLengthM, pointAt } from '../../src/geometry/path.ts';
import { add, distance, type Vec3 } from '../../src/geometry/vec.ts';
import { beginDrawing, lookFrom, onPage, pathOf, savedFile, savedText, strokeOver } from './drawSteps.ts';
import { expect, test } from './house.ts';
import { expectAccessible } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

/** A limb that rises, bows out to the east and comes towards the south. */
const offsets: Path = Array.from({ length: 25 }, (_, i): Vec3 => {
  const t = i / 24;
  return [0.55 * Math.sin(1.2 * t), 0.12 * t + 0.33 * t * t, 0.3 * t];
});

test('a limb drawn from the south and over again from the east has its course in all three directions', async ({
  page,
}) => {
  await beginDrawing(page);
  const before = await savedFile(page);
  const trunk = before.axes[0]?.id ?? '';
  const base = pointAt(pathOf(before, trunk), 0.31);
  const wanted = offsets.map((offset) => add(base, offset));

  await page.getByRole('button', { name: 'Settle' }).click();
  await strokeOver(page, await onPage(page, wanted));
  await expect(page.locator('.drawing-plane')).toHaveText(
    'In the upright plane through Trunk, seen from the south',
  );
  await expectAccessible(page, '.stage');
  await page.mouse.up();
  await expect(page.getByText(/^Drew Trunk, east limb/)).toBeVisible();

  const first = await savedFile(page);
  const made = first.axes.find(({ id }) => before.axes.every((axis) => axis.id !== id));
  if (made === undefined) throw new Error('nothing was drawn');
  expect(first.axes).toHaveLength(before.axes.length + 1);
  const flat = pathOf(first, made.id);
  for (const [, , z] of flat) expect(Math.abs(z - (flat[0] as Vec3)[2])).toBeLessThan(5e-5);

  await lookFrom(page, '2');
  await page.getByRole('button', { name: 'Draw again' }).click();
  await strokeOver(page, await onPage(page, wanted));
  await page.mouse.up();
  await expect(page.getByText('Drew Trunk, east limb again', { exact: true })).toBeVisible();
  const second = await savedFile(page);
  const got = pathOf(second, made.id);
  const lengthM = pathLengthM(wanted);
  expect(Math.abs(pathLengthM(got) / lengthM - 1)).toBeLessThan(0.01);
  for (const share of [0.1, 0.25, 0.5, 0.75, 0.9, 1]) {
    const gapM = distance(pointAt(got, share * pathLengthM(got)), pointAt(wanted, share * lengthM));
    expect(gapM / lengthM, `at ${share} of the length`).toBeLessThan(0.015);
  }

  // Two strokes, two steps of undo.
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  expect((await savedFile(page)).axes).toEqual(before.axes);
  expect(stanceOf(second)).toEqual(stanceOf(before));
});

test('Escape in the middle of a stroke leaves no trace, and the camera stays where it was', async ({
  page,
}) => {
  await beginDrawing(page);
  const before = await savedText(page);
  const file = await savedFile(page);
  const base = pointAt(pathOf(file, file.axes[0]?.id ?? ''), 0.31);
  const spots = await onPage(
    page,
    offsets.map((offset) => add(base, offset)),
  );
  await strokeOver(page, spots);
  await expect(page.locator('.drawing-course')).toBeVisible();
  await page.mouse.wheel(0, 240);
  await page.keyboard.press('Escape');
  await expect(page.locator('.drawing')).toHaveCount(0);
  await page.mouse.move(300, 300);
  await page.mouse.up();
  expect(await savedText(page)).toBe(before);
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  expect(await onPage(page, [base])).toEqual(spots.slice(0, 1));
});

test('a stroke settles level, says so, and does not while Alt is held', async ({ page }) => {
  await beginDrawing(page);
  const file = await savedFile(page);
  const base = pointAt(pathOf(file, file.axes[0]?.id ?? ''), 0.31);
  const level: Path = [base, add(base, [-0.2, 0, 0]), add(base, [-0.41, 0.004, 0])];
  await strokeOver(page, await onPage(page, level));
  await expect(page.locator('.drawing-words')).toHaveText('level');
  await page.keyboard.down('Alt');
  await expect(page.locator('.drawing-words')).toHaveCount(0);
  await page.keyboard.up('Alt');
  await page.mouse.up();
  const made = (await savedFile(page)).axes.at(-1);
  expect(made?.path.map(([, y]) => y)).toEqual([0, 0]);
});

test('beside all wood the mouse turns the picture, and so does the other button on wood', async ({
  page,
}) => {
  await beginDrawing(page);
  const before = await savedText(page);
  const file = await savedFile(page);
  const [spot] = await onPage(page, [pointAt(pathOf(file, file.axes[0]?.id ?? ''), 0.31)]);
  if (spot === undefined) throw new Error('no spot');
  await page.mouse.move(120, 500);
  await page.mouse.down();
  await page.mouse.move(260, 480, { steps: 4 });
  await page.mouse.up();
  await expect(page.getByTestId('view-seen')).not.toHaveText('From the south, east on the right');
  await lookFrom(page, '3');
  await page.mouse.move(spot.x, spot.y);
  await page.mouse.down({ button: 'right' });
  await page.mouse.move(spot.x + 60, spot.y - 40, { steps: 4 });
  await expect(page.locator('.drawing')).toHaveCount(0);
  await page.mouse.up({ button: 'right' });
  expect(await savedText(page)).toBe(before);
});
