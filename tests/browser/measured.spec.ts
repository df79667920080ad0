/**
 * A tree sketched from a tape measure: a form, and twelve limbs brought to given measurements. How long a person takes is
 * estimated by the operators of Card, Moran & Newell 1980, The keystroke-level model for user performance time with
 * interactive systems, Communications of the ACM 23:396 (figures from memory): a key 0.28 s for an average typist, pointing
 * 1.1 s, a press of the button 0.1 s, the hand from keys to mouse or back 0.4 s, making up one's mind 1.35 s.
 */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { branchFigures } from '../../src/editor/figures.ts';
import { turnDeg } from '../../src/geometry/world.ts';
import { expect, test } from './house.ts';
import { openWithoutPicture, sheet } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

const seconds = { key: 0.28, pointing: 1.1, button: 0.1, homing: 0.4, mind: 1.35 };

/** Does what a person does, and counts it: a gesture is a click, a drag, an entry, or a row of steps to the next place. */
class Hand {
  gestures = 0;
  seconds = 0;
  readonly #page: Page;
  #isOnKeys = false;

  constructor(page: Page) {
    this.#page = page;
  }

  #to(isOnKeys: boolean): void {
    this.gestures++;
    this.seconds += seconds.mind + (this.#isOnKeys === isOnKeys ? 0 : seconds.homing);
    this.#isOnKeys = isOnKeys;
  }

  async click(what: Locator): Promise<void> {
    this.#to(false);
    this.seconds += seconds.pointing + 2 * seconds.button;
    await what.click();
  }

  /** A slider is taken hold of and let go elsewhere. */
  async drag(slider: Locator, value: string): Promise<void> {
    this.#to(false);
    this.seconds += 2 * (seconds.pointing + seconds.button);
    await slider.fill(value);
  }

  /** An entry typed into the cell that has the keys, and the key that ends it. */
  async enter(text: string, end: string): Promise<void> {
    this.#to(true);
    this.seconds += (text.length + 1) * seconds.key;
    await this.#page.keyboard.type(text);
    await this.#page.keyboard.press(end);
  }

  /** The same key until the place is reached. */
  async step(key: string, isThere: () => Promise<boolean>): Promise<void> {
    this.#to(true);
    for (let n = 0; n < 80; n++) {
      if (await isThere()) return;
      this.seconds += seconds.key;
      await this.#page.keyboard.press(key);
    }
    throw new Error(`step: ${key} does not lead there`);
  }
}

/** Lateral by lateral: centimetres, degrees from north, degrees from upright. Invented. */
const measured: readonly (readonly [length: string, side: string, upright: string])[] = [
  ['41,5', '101', '57'],
  ['38', '352', '63'],
  ['29,5', '88', '44'],
  ['44', '187', '61'],
  ['36,5', '83', '49'],
  ['33', '171', '38'],
  ['47,5', '279', '66'],
  ['40', '164', '52'],
  ['31', '268', '41'],
  ['43,5', '8', '59'],
  ['35', '251', '55'],
  ['27,5', '347', '36'],
];

test('twelve limbs of a form are brought to their measurements in sixty gestures and five minutes', async ({
  page,
}) => {
  test.setTimeout(300_000);
  await openWithoutPicture(page);
  const hand = new Hand(page);
  await hand.click(sheet(page, 'Tree'));
  await hand.click(page.getByRole('button', { name: 'Start from a form' }));
  await hand.drag(page.getByRole('slider', { name: 'Limbs' }), '4');
  await hand.drag(page.getByRole('slider', { name: 'Laterals on each limb' }), '3');
  await hand.drag(page.getByRole('slider', { name: 'Shoots on the tree' }), '48');
  await hand.click(page.getByRole('button', { name: 'Take this tree' }));
  await hand.click(page.getByRole('radio', { name: 'Table to type in' }));
  await hand.click(page.locator('[data-id="limb-1"] [data-column=length]'));
  const focusedId = () =>
    page.evaluate(() => document.activeElement?.closest('[role=row]')?.getAttribute('data-id') ?? '');
  const focusedColumn = () => page.evaluate(() => document.activeElement?.getAttribute('data-column') ?? '');
  for (const [i, [length, side, upright]] of measured.entries()) {
    const id = `limb-${Math.floor(i / 3) + 1}-${(i % 3) + 1}`;
    await hand.step('ArrowDown', async () => (await focusedId()) === id);
    for (let back = 0; (await focusedColumn()) !== 'length' && back < 3; back++) {
      hand.seconds += seconds.key;
      await page.keyboard.press('ArrowLeft');
    }
    await hand.enter(length, 'Tab');
    await expect.poll(focusedColumn).toBe('side');
    await hand.enter(side, 'Tab');
    await expect.poll(focusedColumn).toBe('upright');
    await hand.enter(upright, 'Enter');
    await expect.poll(focusedColumn).toBe('upright');
  }
  expect(hand.gestures).toBeLessThanOrEqual(60);
  expect(hand.seconds).toBeLessThanOrEqual(300);
  test.info().annotations.push({
    type: 'sketch',
    description: `${hand.gestures} gestures, ${hand.seconds.toFixed(0)} s by the keystroke-level model`,
  });

  const saving = page.waitForEvent('download');
  await page.locator('body').press('Control+s');
  const read = parseTreeFile(readFileSync(await (await saving).path(), 'utf8'));
  if (!read.ok) throw new Error(read.reason);
  const kinds = (kind: string) => read.file.axes.filter((axis) => axis.kind === kind);
  expect(kinds('scaffold')).toHaveLength(4);
  expect(kinds('shoot')).toHaveLength(48);
  const laterals = kinds('lateral').toSorted((a, b) => (a.id < b.id ? -1 : 1));
  expect(laterals).toHaveLength(12);
  const off = laterals.map((axis, i) => {
    const [length = '', side = '', upright = ''] = measured[i] ?? [];
    const figures = branchFigures(axis);
    return {
      lengthM: Math.abs(figures.lengthM - Number(length.replace(',', '.')) / 100),
      deg: Math.max(
        Math.abs(turnDeg(Number(side), figures.bearingDeg)),
        Math.abs(Number(upright) - figures.fromUprightDeg),
      ),
    };
  });
  expect(Math.max(...off.map(({ lengthM }) => lengthM))).toBeLessThan(0.01);
  expect(Math.max(...off.map(({ deg }) => deg))).toBeLessThan(2);
});
