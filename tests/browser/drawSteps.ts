/** What the tests of drawing and pulling do on the stage. */
import { readFileSync } from 'node:fs';
import type { CDPSession, Page } from '@playwright/test';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { stanceOf } from '../../src/document/views.ts';
import type { Path } from '../../src/geometry/path.ts';
import { placeTree } from '../../src/geometry/tree.ts';
import type { Vec3 } from '../../src/geometry/vec.ts';
import type { StageProbe } from '../../src/ui/scene/stageModel.ts';
import { expect } from './house.ts';
import { openPage, sheet, stageIsDrawn } from './pageSteps.ts';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export async function savedText(page: Page): Promise<string> {
  const saving = page.waitForEvent('download');
  await page.locator('body').press('Control+s');
  return readFileSync(await (await saving).path(), 'utf8');
}

export async function savedFile(page: Page): Promise<TreeFile> {
  const read = parseTreeFile(await savedText(page));
  if (!read.ok) throw new Error(read.reason);
  return read.file;
}

export function pathOf(file: TreeFile, id: string): Path {
  const placed = placeTree({ axes: file.axes }, stanceOf(file)).get(id);
  if (placed === undefined) throw new Error(`pathOf: no branch ${id}`);
  return placed.path;
}

/** Where points of the world lie on the page. */
export async function onPage(page: Page, points: readonly Vec3[]): Promise<readonly Spot[]> {
  return page.evaluate((all) => {
    const probe = (window as Window & { boughlightStage?: StageProbe }).boughlightStage;
    const box = document.querySelector('.stage canvas')?.getBoundingClientRect();
    return all.map((point) => {
      const pixel = probe?.project(point) ?? null;
      if (pixel === null || box === undefined) throw new Error(`not in the picture: ${point.join(', ')}`);
      return { x: box.x + pixel[0], y: box.y + pixel[1] };
    });
  }, points);
}

const seen = {
  '2': 'From the east, north on the right',
  '3': 'From the south, east on the right',
} as const;

export async function lookFrom(page: Page, key: keyof typeof seen): Promise<void> {
  await page.keyboard.press(key);
  await expect(page.getByTestId('view-seen')).toHaveText(seen[key]);
}

export async function beginDrawing(page: Page): Promise<void> {
  await openPage(page);
  await sheet(page, 'Tree').click();
  await stageIsDrawn(page);
  await lookFrom(page, '3');
  await page.keyboard.press('d');
  await expect(page.getByRole('group', { name: 'Drawing' })).toBeVisible();
}

/** A stroke of the mouse along spots of the page; the button stays down. */
export async function strokeOver(page: Page, [first, ...rest]: readonly Spot[]): Promise<void> {
  if (first === undefined) throw new Error('strokeOver: no spots');
  await page.mouse.move(first.x, first.y);
  await page.mouse.down();
  for (const { x, y } of rest) await page.mouse.move(x, y);
}

/** Fingers on the glass, by number; told to the browser as the glass would. */
export class Fingers {
  private readonly down = new Map<number, Spot>();
  private readonly cdp: CDPSession;
  constructor(cdp: CDPSession) {
    this.cdp = cdp;
  }
  async press(id: number, { x, y }: Spot): Promise<void> {
    this.down.set(id, { x, y });
    await this.send('touchStart');
  }
  async move(id: number, { x, y }: Spot): Promise<void> {
    this.down.set(id, { x, y });
    await this.send('touchMove');
  }
  async lift(id: number): Promise<void> {
    this.down.delete(id);
    await this.send('touchEnd');
  }
  /** The system takes all of them away. */
  async cancel(): Promise<void> {
    this.down.clear();
    await this.send('touchCancel');
  }
  private async send(type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel'): Promise<void> {
    const touchPoints = [...this.down].map(([id, { x, y }]) => ({ id, x, y }));
    await this.cdp.send('Input.dispatchTouchEvent', { type, touchPoints });
  }
}
