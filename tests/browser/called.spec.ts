/** A tree called out number by number and typed into the table, from a bare stem, with no hand on the mouse. */
import type { TreeFile } from '../../src/document/treeFile.ts';
import { branchFigures } from '../../src/editor/figures.ts';
import { turnDeg } from '../../src/geometry/world.ts';
import { expect, test } from './house.ts';
import { focusedCell, keyTo, savedByKey, tabTo } from './keySteps.ts';
import { openWithoutPicture } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

/** As a grower calls them; empty: what stands there is right. Columns from the name on, to the leaves. */
const called: readonly { readonly on: string; readonly cells: readonly string[] }[] = [
  //                      name, along, round, length, side, upright, base, tip, leaves
  { on: 'Stem', cells: ['East limb', '38,5', '', '61', 'E', '48', '19', '9'] },
  { on: 'Stem', cells: ['West limb', '42.5', '', '0,58 m', '265', '51', '1,8 cm', '0.8 cm'] },
  { on: 'East limb', cells: ['Low shoot', '20', '', `1'2"`, 'NE', '30', '9', '5', '11'] },
  { on: 'East limb', cells: ['Top shoot', '1 ft', '', '14 in', '101', '22,5', '0.3 in', '4', '9'] },
];

const wanted = [
  { name: 'East limb', atM: 0.385, lengthM: 0.61, side: 90, upright: 48, baseM: 0.019 },
  { name: 'West limb', atM: 0.425, lengthM: 0.58, side: 265, upright: 51, baseM: 0.018 },
  { name: 'Low shoot', atM: 0.2, lengthM: 0.3556, side: 45, upright: 30, baseM: 0.009 },
  { name: 'Top shoot', atM: 0.3048, lengthM: 0.3556, side: 101, upright: 22.5, baseM: 0.00762 },
];

test('a tree is typed in from a bare stem by keys alone, with comma and point, cm, mm, m, inches and feet', async ({
  page,
}) => {
  await openWithoutPicture(page);
  await page.keyboard.press('F3');
  await tabTo(page, page.getByRole('button', { name: 'Start from a form' }));
  await page.keyboard.press('Enter');
  await tabTo(page, page.getByRole('radio', { name: /^Single stem/ }));
  await keyTo(page, 'ArrowRight', page.getByRole('radio', { name: /^Bare stem/ }));
  await tabTo(page, page.getByRole('button', { name: 'Take this tree' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Bare stem');
  // Where the form was, the tree's own page takes the keys.
  await tabTo(page, page.getByRole('radio', { name: 'List' }));
  await keyTo(page, 'ArrowRight', page.getByRole('radio', { name: 'Table to type in' }));
  await tabTo(page, page.locator('.grid-cell'));
  await page.keyboard.press('F2');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('Stem');
  await page.keyboard.press('Enter');
  for (const { on, cells } of called) {
    await page.keyboard.press('Control+Home');
    const parent = page.locator('[data-column=name]', { hasText: on }).first();
    await keyTo(page, 'ArrowDown', parent, 12);
    await page.keyboard.press('Insert');
    await expect.poll(async () => (await focusedCell(page)).text).not.toBe(on);
    for (const text of cells) {
      if (text === '') await page.keyboard.press('ArrowRight');
      else {
        await page.keyboard.type(text);
        await page.keyboard.press('Tab');
      }
    }
  }
  await expect(page.getByRole('alert')).toHaveText('');
  const { axes } = await savedByKey(page);
  expectCalled(axes, 0.1);

  // Copied out, deleted and pasted back, the branches are the same again.
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Space');
  await page.keyboard.press('Control+c');
  await expect(page.locator('.notice')).toHaveText('Copied 4 rows');
  await keyTo(page, 'Shift+Tab', page.getByRole('button', { name: 'Delete them' }));
  await page.keyboard.press('Enter');
  await expect(page.locator('.grid-body [role=row]')).toHaveCount(1);
  await tabTo(page, page.locator('.grid-cell'));
  await page.keyboard.press('Control+v');
  await expect(page.locator('.grid-body [role=row]')).toHaveCount(5);
  // Angles are copied as they are shown, in whole degrees.
  expectCalled((await savedByKey(page)).axes, 0.51);
});

function expectCalled(axes: TreeFile['axes'], withinDeg: number): void {
  const names = ['Stem', ...wanted.map(({ name }) => name)];
  expect(axes.map(({ name }) => name).toSorted()).toEqual(names.toSorted());
  const found = wanted.map(({ name }) => {
    const axis = axes.find((one) => one.name === name);
    if (axis === undefined) throw new Error(`${name} is not in the file`);
    return { axis, figures: branchFigures(axis) };
  });
  wanted.forEach((one, i) => {
    const { axis, figures } = found[i] as (typeof found)[number];
    expect(axis.atM).toBeCloseTo(one.atM, 3);
    expect(figures.lengthM).toBeCloseTo(one.lengthM, 3);
    expect(Math.abs(turnDeg(one.side, figures.bearingDeg))).toBeLessThan(withinDeg);
    expect(Math.abs(one.upright - figures.fromUprightDeg)).toBeLessThan(withinDeg);
    expect(axis.baseDiameterM).toBeCloseTo(one.baseM, 4);
  });
  expect(found.slice(2).map(({ axis: { foliage } }) => [foliage?.count, foliage?.source])).toEqual([
    [11, 'measured'],
    [9, 'measured'],
  ]);
}

test('a step in the table draws two lines anew, not the whole of it', async ({ page }) => {
  await openWithoutPicture(page);
  await page.keyboard.press('F3');
  await page.getByRole('radio', { name: 'Table to type in' }).check();
  await page.locator('.grid-body [data-column=length]').nth(7).focus();
  await page.evaluate(() => {
    const lines = new Set<Element>();
    Object.assign(window, { touchedLines: lines });
    const body = document.querySelector('.grid-body');
    if (body === null) throw new Error('no table');
    new MutationObserver((changes) => {
      for (const { target } of changes) {
        const line = (target instanceof Element ? target : target.parentElement)?.closest('[role=row]');
        if (line) lines.add(line);
      }
    }).observe(body, { subtree: true, attributes: true, childList: true, characterData: true });
  });
  await page.keyboard.press('ArrowDown');
  await expect.poll(async () => (await focusedCell(page)).column).toBe('length');
  expect(
    await page.evaluate(() => (window as Window & { touchedLines?: Set<Element> }).touchedLines?.size),
  ).toBe(2);
});

test('spacing, splitting, condition and ticks are reached by the keys that are shown', async ({ page }) => {
  await openWithoutPicture(page);
  await page.keyboard.press('F3');
  await page.getByRole('radio', { name: 'Table to type in' }).check();
  await page.locator('[data-id] [data-column=name]', { hasText: /limb$/ }).first().focus();
  const { id } = await focusedCell(page);
  const rows = page.locator('.grid-body [role=row]');
  const before = await rows.count();
  await expect(page.locator('.branch-tools kbd')).toHaveText('F9');
  await page.keyboard.press('F9');
  await tabTo(page, page.getByLabel('How many'));
  await page.keyboard.press('Control+a');
  await page.keyboard.type('2');
  await tabTo(page, page.getByLabel(/^From one to the next/));
  await page.keyboard.press('Control+a');
  await page.keyboard.type('12,5');
  await tabTo(page, page.getByRole('button', { name: 'Add these shoots' }));
  await page.keyboard.press('Enter');
  await expect(rows).toHaveCount(before + 2);
  await tabTo(page, page.getByRole('button', { name: 'Split it here' }));
  await page.keyboard.press('Enter');
  await expect(rows).toHaveCount(before + 3);
  // Its fields went with the branch that was split: the keys are in the table again, on the outer part.
  await expect.poll(async () => (await focusedCell(page)).column).toBe('name');
  await page.keyboard.press('F9');
  await expect(page.getByLabel('Shoots', { exact: true })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect.poll(async () => (await focusedCell(page)).column).toBe('name');
  await keyTo(page, 'ArrowRight', page.locator('[aria-selected=true] [data-column=condition]'));
  await page.keyboard.press('Enter');
  await page.keyboard.type('dead');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+a');
  await expect(page.getByRole('heading', { name: `With the ${before + 3} ticked branches` })).toBeVisible();
  const { axes } = await savedByKey(page);
  const outer = axes.find((axis) => axis.parentId === id && axis.condition === 'dead');
  expect(outer?.kind).toBe('scaffold');
});
