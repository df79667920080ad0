/** Fingers on the stage of a phone: one draws, two turn the picture, and nothing else leaves a trace. */
import { pointAt } from '../../src/geometry/path.ts';
import { add } from '../../src/geometry/vec.ts';
import { beginDrawing, Fingers, onPage, pathOf, type Spot, savedFile, savedText } from './drawSteps.ts';
import { expect, test } from './house.ts';
import { expectAccessible } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

const by = ({ x, y }: Spot, dx: number, dy: number): Spot => ({ x: x + dx, y: y + dy });

test('one finger draws a limb; pinches, palms, Escape and lost fingers leave the file as it was', async ({
  page,
  context,
}) => {
  await beginDrawing(page);
  const fingers = new Fingers(await context.newCDPSession(page));
  const before = await savedText(page);
  const file = await savedFile(page);
  const wood = pointAt(pathOf(file, file.axes[0]?.id ?? ''), 0.31);
  const spot = async (): Promise<Spot> => (await onPage(page, [wood]))[0] as Spot;
  const drawing = page.locator('.drawing');
  const begin = async (): Promise<Spot> => {
    const from = await spot();
    await fingers.press(1, from);
    for (let i = 1; i <= 5; i++) await fingers.move(1, by(from, 12 * i, -3 * i));
    await expect(drawing).toHaveCount(1);
    return from;
  };

  // A second finger, and a pinch with both: the picture grows.
  const from = await begin();
  await fingers.press(2, by(from, -60, 45));
  await expect(drawing).toHaveCount(0);
  for (let i = 1; i <= 5; i++) {
    await fingers.move(1, by(from, 60 + 6 * i, -15 - 6 * i));
    await fingers.move(2, by(from, -60 - 6 * i, 45 + 3 * i));
  }
  await fingers.lift(2);
  await fingers.move(1, by(from, 10, 10));
  await fingers.lift(1);
  const sizeOf = async (): Promise<number> => {
    const [low, high] = await onPage(page, [wood, add(wood, [0, 0.5, 0])]);
    return (low as Spot).y - (high as Spot).y;
  };
  const pinched = await sizeOf();
  await page.keyboard.press('3');
  await expect.poll(sizeOf).toBeLessThan(pinched * 0.95);
  expect(await savedText(page)).toBe(before);

  // Quick pinches, both fingers down before either moved.
  for (let n = 0; n < 3; n++) {
    const at = await spot();
    await fingers.press(1, at);
    await fingers.press(2, by(at, 50, 40));
    await fingers.move(1, by(at, -20 - n, -20));
    await fingers.move(2, by(at, 70, 60 + n));
    await fingers.lift(1);
    await fingers.lift(2);
    await page.keyboard.press('3');
  }
  // A palm of three fingers in the middle of a stroke.
  const palm = await begin();
  await fingers.press(2, by(palm, 70, 30));
  await fingers.press(3, by(palm, 90, 60));
  for (const id of [1, 2, 3]) await fingers.lift(id);
  await page.keyboard.press('3');
  // A finger of the other hand on the sheet.
  await begin();
  await fingers.press(2, { x: 200, y: 480 });
  await expect(drawing).toHaveCount(0);
  for (const id of [1, 2]) await fingers.lift(id);
  // The system takes the finger away.
  await begin();
  await fingers.cancel();
  await expect(drawing).toHaveCount(0);
  // Escape, and the finger goes on.
  const escaped = await begin();
  await page.keyboard.press('Escape');
  await expect(drawing).toHaveCount(0);
  await fingers.move(1, by(escaped, 90, 20));
  await fingers.lift(1);

  expect(await savedText(page)).toBe(before);
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();

  // And then it draws.
  await begin();
  await fingers.lift(1);
  await expect(page.getByRole('button', { name: 'Undo' })).toBeEnabled();
  expect((await savedFile(page)).axes).toHaveLength(file.axes.length + 1);
  await expectAccessible(page, '.stage');
});

test('where the hand looks, one finger on wood turns the picture', async ({ page, context }) => {
  await beginDrawing(page);
  await page.keyboard.press('d');
  const fingers = new Fingers(await context.newCDPSession(page));
  const before = await savedText(page);
  const file = await savedFile(page);
  const [from] = await onPage(page, [pointAt(pathOf(file, file.axes[0]?.id ?? ''), 0.31)]);
  await fingers.press(1, from as Spot);
  for (let i = 1; i <= 5; i++) await fingers.move(1, by(from as Spot, 12 * i, -3 * i));
  await fingers.lift(1);
  await expect(page.getByTestId('view-seen')).not.toHaveText('From the south, east on the right');
  expect(await savedText(page)).toBe(before);
});

test('a tap among several shoots takes one and offers the others by name', async ({ page }) => {
  await beginDrawing(page);
  await page.keyboard.press('d');
  const file = await savedFile(page);
  const shoots = file.axes.filter(({ kind }) => kind === 'shoot').map(({ id }) => pathOf(file, id).at(-1));
  const list = page.getByRole('group', { name: 'Which one was meant?' });
  let offered = 0;
  for (const tip of shoots) {
    if (tip === undefined) continue;
    const [spot] = await onPage(page, [tip]);
    if (spot === undefined || spot.y < 130 || spot.x < 80 || spot.x > 250) continue;
    await page.touchscreen.tap(spot.x, spot.y);
    offered = await list.getByRole('button').count();
    if (offered > 2) break;
  }
  expect(offered).toBeGreaterThan(2);
  await expectAccessible(page, '.stage');
  const second = list.getByRole('button').nth(1);
  const name = (await second.textContent()) ?? '';
  const box = await second.boundingBox();
  expect(box?.height).toBeGreaterThanOrEqual(44);
  await second.tap();
  await expect(list).toHaveCount(0);
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue(name);
});
