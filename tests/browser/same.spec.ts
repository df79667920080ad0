/** The page, the headless command and the files agree: one engine, the same file, the same figures. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import type { LightReport } from '../../src/engine/reports.ts';
import { expect, test } from './house.ts';

const project = join(import.meta.dirname, '..', '..');

/** What the command answers for the sample that the page opens on. */
function lightByCommand(): LightReport {
  const args = ['bin/boughlight.mjs', 'light', 'public/examples/potted-fig-in-leaf.json', '--json'];
  const { stdout, stderr } = spawnSync(process.execPath, args, { cwd: project, encoding: 'utf8' });
  expect(stderr).toBe('');
  return JSON.parse(stdout) as LightReport;
}

test('the table of the page shows for every shoot what the command answers', async ({ page }) => {
  const { shoots } = lightByCommand();
  const expected = Object.fromEntries(
    shoots.map(({ id, name, lightFraction, parMolM2Day, leafLightFraction }) => [
      id,
      [
        name,
        `${(100 * lightFraction).toFixed(0)} %`,
        parMolM2Day.toFixed(1),
        `${(100 * leafLightFraction).toFixed(0)} %`,
      ],
    ]),
  );
  await page.goto('./');
  const rows = page.locator('table.shoots tbody tr');
  await expect(async () => {
    const shown = await rows.evaluateAll((found) =>
      found.map((row) => ({
        id: row.getAttribute('data-id') ?? '',
        cells: Array.from(row.children, (cell) => (cell.textContent ?? '').replace(/ ± .*/, '').trim()),
      })),
    );
    expect(Object.fromEntries(shown.map(({ id, cells }) => [id, cells]))).toEqual(expected);
  }).toPass({ timeout: 50_000 });
});
