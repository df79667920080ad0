/** What the tests of the page do again and again. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import type { StageProbe } from '../../src/ui/scene/stageModel.ts';
import { expect } from './house.ts';

/**
 * The page as on a device that has no 3D: every figure and every edit must be there all the same. Tests that do not
 * look at the picture use it too, as drawing in software takes most of their time.
 */
export async function openWithoutPicture(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const original = HTMLCanvasElement.prototype.getContext;
    const without = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
      return kind.startsWith('webgl') ? null : Reflect.apply(original, this, [kind, ...rest]);
    };
    HTMLCanvasElement.prototype.getContext = without as typeof original;
  });
  await openPage(page);
  await expect(page.getByText('This browser shows no 3D picture')).toBeVisible();
}

export async function openPage(page: Page): Promise<void> {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto('./');
  await expect(page.getByTestId('headline')).toHaveText(/shoots? sits? in deep shade/);
}

/** Waits until the finest light is there. */
export async function lightIsDone(page: Page): Promise<void> {
  await expect(page.getByTestId('light-state')).toBeEmpty();
}

/** Presses the button of a command and tells whether the figures are marked long before new ones can come. */
export const saysOutOfDateAtOnce = (page: Page, command: string): Promise<boolean> =>
  page.evaluate(async (id) => {
    document.querySelector<HTMLButtonElement>(`[data-command=${id}]`)?.click();
    // React draws in the microtasks after the click.
    await new Promise((resolve) => setTimeout(resolve, 0));
    return document.querySelector('.state-words.is-stale') !== null;
  }, command);

export const sheet = (page: Page, name: 'Place' | 'Tree' | 'Light' | 'Work') =>
  page.getByRole('tab', { name });

export async function openSample(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name }).click();
}

/** Waits until the list is that of the tree and of what is asked, regrown where it had to be, and its ticks are scored. */
export async function workIsDone(page: Page): Promise<void> {
  // A list is tried in many trees and years before it is shown: longer than other work.
  const patience = { timeout: 120_000 };
  await expect(page.getByTestId('work-headline')).toContainText(/ripen|Nothing needs doing/, patience);
  await expect(page.getByTestId('work-state')).toHaveText('', patience);
  await expect(page.locator('.cut-list.is-stale')).toHaveCount(0);
  await expect(page.getByText('Growing the tree for these cuts')).toHaveCount(0);
}

/** Opens a part of the Light sheet and waits until it is whole. */
export async function lookAt(page: Page, name: 'Shoots' | 'Day' | 'Sky' | 'Spread'): Promise<void> {
  await page.getByRole('radio', { name, exact: true }).check();
  const sign = { Shoots: '.shoots', Day: '.strip', Sky: '.sky-picture', Spread: '.bands' }[name];
  await expect(page.locator(sign).first()).toBeVisible();
  await expect(page.locator('.look.is-old')).toHaveCount(0);
}

/** @param within the part of the page that is looked through; all of it by default */
export async function expectAccessible(page: Page, within = 'html'): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).include(within).analyze();
  expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
}

type Probed = Window & { boughlightStage?: StageProbe };

export async function stageIsDrawn(page: Page): Promise<void> {
  await page.waitForFunction(() => ((window as Probed).boughlightStage?.frames() ?? 0) > 0);
}

/** A pixel of the page at which the stage would select a shoot, and that shoot's id. */
export async function shootOnStage(page: Page): Promise<{ x: number; y: number; id: string }> {
  const found = await page.evaluate(() => {
    const probe = (window as Probed).boughlightStage;
    const box = document.querySelector('.stage canvas')?.getBoundingClientRect();
    if (probe === undefined || box === undefined) return null;
    for (let y = box.height * 0.2; y < box.height * 0.6; y += 9) {
      for (let x = box.width * 0.3; x < box.width * 0.7; x += 11) {
        const id = probe.pick(x, y);
        if (id !== null && document.querySelector(`.shoots tr[data-id="${id}"]`)) {
          return { x: box.x + x, y: box.y + y, id };
        }
      }
    }
    return null;
  });
  if (found === null) throw new Error('shootOnStage: no shoot was found in the middle of the stage');
  return found;
}

/** Shares of the pixels of the stage that are clearly blue and clearly yellow. */
export async function strongColours(page: Page): Promise<{ blue: number; yellow: number }> {
  const png = await page.locator('.stage').screenshot();
  return page.evaluate(
    async (bytes) => {
      const image = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/png' }));
      const canvas = new OffscreenCanvas(image.width, image.height);
      const pen = canvas.getContext('2d');
      if (pen === null) throw new Error('strongColours: no 2D canvas');
      pen.drawImage(image, 0, 0);
      const { data } = pen.getImageData(0, 0, image.width, image.height);
      let [blue, yellow] = [0, 0];
      for (let i = 0; i < data.length; i += 4) {
        const [r, g, b] = [data[i] ?? 0, data[i + 1] ?? 0, data[i + 2] ?? 0];
        if (b > r + 45) blue++;
        if (r > 150 && g > 130 && b < 110) yellow++;
      }
      return { blue: blue / (data.length / 4), yellow: yellow / (data.length / 4) };
    },
    [...png],
  );
}
