/** A limb brought to its measurements on the stage by mouse and keys; what is checked is the tree file. */
import type { Page } from '@playwright/test';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { branchFigures } from '../../src/editor/figures.ts';
import { handlePlaces } from '../../src/editor/pull/handlePlaces.ts';
import { add, distance, scale, type Vec3 } from '../../src/geometry/vec.ts';
import { direction, turnDeg } from '../../src/geometry/world.ts';
import type { StageProbe } from '../../src/ui/scene/stageModel.ts';
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

/** Where a point of the world lies on the page. */
async function onPage(page: Page, point: Vec3): Promise<{ x: number; y: number }> {
  const found = await page.evaluate((at) => {
    const probe = (window as Window & { boughlightStage?: StageProbe }).boughlightStage;
    const box = document.querySelector('.stage canvas')?.getBoundingClientRect();
    const pixel = probe?.project(at) ?? null;
    return pixel === null || box === undefined ? null : { x: box.x + pixel[0], y: box.y + pixel[1] };
  }, point);
  if (found === null) throw new Error('onPage: the point is not in the picture');
  return found;
}

const handle = (page: Page, key: string) => page.locator(`[data-handle="${key}"]`);

const views = {
  north: ['1', 'From the north, west on the right'],
  east: ['2', 'From the east, north on the right'],
  south: ['3', 'From the south, east on the right'],
  west: ['4', 'From the west, south on the right'],
  above: ['5', 'From above, north at the top'],
} as const;

/** The handles move with the picture, so what follows waits until it is there. */
async function lookFrom(page: Page, view: keyof typeof views): Promise<void> {
  const [key, words] = views[view];
  await page.keyboard.press(key);
  await expect(page.getByTestId('view-seen')).toHaveText(words);
}

async function beginDrawing(page: Page): Promise<void> {
  await openPage(page);
  await sheet(page, 'Tree').click();
  await stageIsDrawn(page);
  await page.getByRole('button', { name: new RegExp(`^${limb} \\d`) }).click();
  await lookFrom(page, 'south');
  await page.keyboard.press('d');
  await expect(handle(page, 'tip-0')).toBeVisible();
}

/** Takes the tip with the mouse and lets it go where a point of the world lies. */
async function pullTipTo(page: Page, point: Vec3): Promise<void> {
  const box = await handle(page, 'tip-0').boundingBox();
  if (box === null) throw new Error('pullTipTo: the tip is not in the picture');
  const to = await onPage(page, point);
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move((box.x + to.x) / 2, (box.y + to.y) / 2, { steps: 2 });
  await page.mouse.move(to.x, to.y);
  await page.mouse.up();
}

test('a limb is pulled to its measurements from above and from the side, each pull one step', async ({
  page,
}) => {
  await beginDrawing(page);
  const before = await savedByKey(page);
  const id = limbIn(before).id;
  const base = handlePlaces(before, id)?.base as Vec3;
  // By tape and compass: 83 cm, bearing 118, 41 degrees from upright. Invented.
  const way = direction(118, 49);
  const old = branchFigures(limbIn(before));
  const chordM = Math.hypot(...(limbIn(before).path.at(-1) as Vec3));
  const target = add(base, scale(way, (0.83 * chordM) / old.lengthM));
  await lookFrom(page, 'above');
  await pullTipTo(page, target);
  await expect(page.locator('[data-command=undo]')).toBeEnabled();
  const half = await savedByKey(page);
  // From above no height changed.
  expect(limbIn(half).path.map(([, y]) => y)).toEqual(limbIn(before).path.map(([, y]) => y));
  await lookFrom(page, 'south');
  await pullTipTo(page, target);
  const after = await savedByKey(page);
  expect(limbIn(after).path.map(([, , z]) => z)).toEqual(limbIn(half).path.map(([, , z]) => z));
  const figures = branchFigures(limbIn(after));
  expect(distance(handlePlaces(after, id)?.tip as Vec3, target)).toBeLessThan(0.01);
  expect(Math.abs(figures.lengthM - 0.83)).toBeLessThan(0.01);
  expect(Math.abs(turnDeg(118, figures.bearingDeg))).toBeLessThan(2);
  expect(Math.abs(figures.fromUprightDeg - 41)).toBeLessThan(2);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  expect(await savedByKey(page)).toEqual(before);
  await expect(page.locator('[data-command=undo]')).toBeDisabled();
});

test('figures typed beside the limb are exact, and locked ones outlast a pull', async ({ page }) => {
  await beginDrawing(page);
  await page.locator('.live-figures').click();
  const label = page.getByRole('group', { name: `Figures of ${limb}` });
  await expectAccessible(page, '.handles');
  const type = async (field: RegExp, text: string) => {
    await label.getByRole('textbox', { name: field }).fill(text);
    await page.keyboard.press('Enter');
  };
  await type(/^Side/, '131,3');
  await type(/^From upright/, '43.7');
  await type(/^Length/, '87,4');
  await type(/^Thick at base/, '27');
  const typed = branchFigures(limbIn(await savedByKey(page)));
  expect(typed.bearingDeg).toBeCloseTo(131.3, 2);
  expect(typed.fromUprightDeg).toBeCloseTo(43.7, 2);
  expect(typed.lengthM).toBeCloseTo(0.874, 3);
  expect(limbIn(await savedByKey(page)).baseDiameterM).toBe(0.027);
  await label.getByRole('button', { name: 'Lock the length' }).click();
  await label.getByRole('button', { name: 'Lock the angle' }).click();
  const tip = handlePlaces(await savedByKey(page), limbIn(await savedByKey(page)).id)?.tip as Vec3;
  await lookFrom(page, 'above');
  await pullTipTo(page, add(tip, [0.11, 0, 0.17]));
  const pulled = branchFigures(limbIn(await savedByKey(page)));
  expect(pulled.lengthM).toBeCloseTo(0.874, 3);
  expect(pulled.fromUprightDeg).toBeCloseTo(43.7, 1);
  expect(Math.abs(turnDeg(131.3, pulled.bearingDeg))).toBeGreaterThan(3);
});

test('the arrow keys move a handle, Enter keeps it as one step, Escape leaves no trace', async ({ page }) => {
  await beginDrawing(page);
  const before = await savedByKey(page);
  await handle(page, 'tip-0').focus();
  for (const key of ['ArrowUp', 'ArrowUp', 'ArrowRight', 'Shift+ArrowLeft']) await page.keyboard.press(key);
  await page.keyboard.press('Escape');
  expect(await savedByKey(page)).toEqual(before);
  await expect(page.locator('[data-command=undo]')).toBeDisabled();
  await handle(page, 'base-0').focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Enter');
  const after = await savedByKey(page);
  expect(limbIn(after).atM).toBeCloseTo(limbIn(before).atM + 0.019, 3);
  await page.keyboard.press('Control+z');
  expect(await savedByKey(page)).toEqual(before);
});

test('Escape in the middle of a pull leaves no trace', async ({ page }) => {
  await beginDrawing(page);
  const before = await savedByKey(page);
  const box = await handle(page, 'tip-0').boundingBox();
  if (box === null) throw new Error('the tip is not in the picture');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x - 60, box.y + 40, { steps: 3 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect(await savedByKey(page)).toEqual(before);
  await expect(handle(page, 'tip-0')).toBeVisible();
  await expect(page.locator('[data-command=undo]')).toBeDisabled();
});

test('each view is one tap and one key away, and keys alone can be turned off', async ({ page }) => {
  await openPage(page);
  await stageIsDrawn(page);
  const seen = page.getByTestId('view-seen');
  for (const view of Object.keys(views) as (keyof typeof views)[]) await lookFrom(page, view);
  for (const [side, [, words]] of Object.entries(views)) {
    await page.locator(`[data-command=from-${side}]`).click();
    await expect(seen).toHaveText(words);
  }
  await page.keyboard.press('6');
  await expect(page.locator('[data-command=from-front]')).toHaveAttribute('aria-pressed', 'true');
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('checkbox', { name: /^Keys alone/ }).uncheck();
  await page.keyboard.press('Escape');
  await page.keyboard.press('1');
  await expect(page.locator('[data-command=from-front]')).toHaveAttribute('aria-pressed', 'true');
});

test('the second view shows the other direction and is swapped with the large one by a tap', async ({
  page,
}) => {
  await beginDrawing(page);
  const second = page.locator('.second-picture');
  await expect(second).toHaveAccessibleName('Second view, from above. Look from there');
  const limbOf = () => second.locator('path.is-selected').getAttribute('d');
  const before = await limbOf();
  const box = await handle(page, 'tip-0').boundingBox();
  if (box === null) throw new Error('the tip is not in the picture');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x - 70, box.y + 30, { steps: 3 });
  // Live, before the hand lets go.
  await expect.poll(limbOf).not.toBe(before);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect.poll(limbOf).toBe(before);
  await second.click();
  await expect(page.getByTestId('view-seen')).toHaveText(views.above[1]);
  await expect(second).toHaveAccessibleName('Second view, from the south. Look from there');
  await second.click();
  await expect(page.getByTestId('view-seen')).toHaveText(views.south[1]);
  await page.getByRole('button', { name: 'Second view', exact: true }).click();
  await expect(second).toBeHidden();
});
