/** The page, the headless command and the files agree: one engine, the same file, the same figures. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import type { PlanReport } from '../../src/cli/outputSchemas.ts';
import type { LightReport } from '../../src/engine/reports.ts';
import { expect, test } from './house.ts';
import { openWithoutPicture, sheet, workIsDone } from './pageSteps.ts';

const project = join(import.meta.dirname, '..', '..');

/** What the command answers for the sample that the page opens on. */
function byCommand(command: 'light' | 'plan'): unknown {
  const args = ['bin/boughlight.mjs', command, 'public/examples/potted-fig-in-leaf.json', '--json'];
  const { stdout, stderr } = spawnSync(process.execPath, args, { cwd: project, encoding: 'utf8' });
  expect(stderr).toBe('');
  return JSON.parse(stdout);
}

test('the table of the page shows for every shoot what the command answers', async ({ page }) => {
  const { shoots } = byCommand('light') as LightReport;
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

test('the cut list of the page is that of the command: the same cuts, gains and doubts', async ({ page }) => {
  test.setTimeout(120_000);
  const { cuts, yourCall, score, confidence } = byCommand('plan') as PlanReport;
  const expected = [...cuts, ...(yourCall ?? [])].map(({ id, gain, standsIn }) => {
    const figs = gain.figs.toFixed(1).replace('-', '');
    const sign = Number(figs) === 0 ? '± ' : gain.figs < 0 ? '−' : '+';
    return {
      id,
      gain: `${sign}${Number(figs) === 0 ? '0' : figs} figs`,
      sure:
        standsIn === null || standsIn === undefined
          ? ''
          : `right in ${standsIn.stands} of ${standsIn.worlds}`,
    };
  });
  await openWithoutPicture(page);
  await sheet(page, 'Work').click();
  await workIsDone(page);
  const shown = await page.locator('.cut').evaluateAll((rows) =>
    rows.map((row) => ({
      id: row.getAttribute('data-id') ?? '',
      gain: row.querySelector('.cut-gain')?.textContent ?? '',
      sure: (row.querySelector('.cut-open .cut-foot')?.textContent ?? '').split(' · ')[0] ?? '',
    })),
  );
  expect(shown.map(({ id }) => id)).toEqual(expected.map(({ id }) => id));
  expect(shown.map(({ gain }) => gain)).toEqual(expected.map(({ gain }) => gain));
  for (const [i, { sure }] of expected.entries()) if (sure !== '') expect(shown[i]?.sure).toBe(sure);
  const headline = page.getByTestId('work-headline');
  await expect(headline).toHaveText(
    `${score.plan.ripeFigs.toFixed(0)} figs ripen instead of ${score.doNothing.ripeFigs.toFixed(0)}`,
  );
  await expect(page.locator('.work-head')).toContainText(`no fewer in ${confidence?.figs?.betterIn}.`);
});
