import { expect, test } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { writeTreeFile } from '../../src/document/writeTreeFile.ts';
import { sampleFile } from './sampleFiles.ts';

type Climate = TreeFile['site']['climate'];

const sample = sampleFile('potted-fig-bud-break');
const clearness: Climate['clearness'] = [
  0.29, 0.34, 0.41, 0.45, 0.48, 0.52, 0.54, 0.53, 0.47, 0.4, 0.31, 0.27,
];

/** Light from 5 to 19 o'clock of solar time, brighter towards noon and towards July. */
const hoursOf = (share: number): number[][] =>
  Array.from({ length: 12 }, (_, month) =>
    Array.from({ length: 24 }, (__, hour) => {
      const high = Math.max(0, Math.sin((Math.PI * (hour - 4.5)) / 14));
      return Math.round(10 * share * (700 - 61.3 * Math.abs(month - 6)) * high) / 10;
    }),
  );
const hourly = { source: 'Made up', globalWM2: hoursOf(1), diffuseWM2: hoursOf(0.37) };

function read(climate: unknown): ReturnType<typeof parseTreeFile> {
  const file = { ...sample, site: { ...sample.site, climate: climate as Climate } };
  return parseTreeFile(JSON.stringify(file));
}

const { sunshineH, ...bare } = sample.site.climate;

test('clearness does without sunshine hours, and sunshine hours without clearness', () => {
  expect(read({ ...bare, clearness }).ok).toBe(true);
  expect(read({ ...bare, sunshineH }).ok).toBe(true);
});

test('a climate that says nothing of the light is refused, also with hours of radiation', () => {
  for (const climate of [bare, { ...bare, hourly }]) {
    const answer = read(climate);
    expect(answer.ok ? '' : answer.reason).toMatch(/sunshine/);
  }
});

test('hours of radiation are kept to the last digit, written on lines that are not too long', () => {
  const answer = read({ ...bare, clearness, hourly });
  if (!answer.ok) throw new Error(answer.reason);
  expect(answer.file.site.climate.hourly).toEqual(hourly);
  const text = writeTreeFile(answer.file);
  const again = parseTreeFile(text);
  expect(again.ok && writeTreeFile(again.file)).toBe(text);
  const lines = text.split('\n');
  const rows = lines.slice(lines.findIndex((line) => line.includes('"globalWM2"')));
  expect(Math.max(...rows.map((line) => line.length))).toBeLessThanOrEqual(111);
  expect(rows.findIndex((line) => line.includes('"diffuseWM2"'))).toBeLessThan(60);
});

test.each([
  ['more from the sky than in all', { ...hourly, diffuseWM2: hoursOf(1.2) }, /sky and sun together/],
  ['a year without any light', { ...hourly, globalWM2: hoursOf(0), diffuseWM2: hoursOf(0) }, /No hour/],
  ['eleven months', { ...hourly, globalWM2: hoursOf(1).slice(1) }, /globalWM2|12/],
  ['23 hours', { ...hourly, diffuseWM2: hoursOf(0.3).map((row) => row.slice(1)) }, /diffuseWM2|24/],
  ['more than the sun gives', { ...hourly, globalWM2: hoursOf(9) }, /1500/],
])('hours of radiation with %s are refused', (_, wrong, words) => {
  const answer = read({ ...bare, clearness, hourly: wrong });
  expect(answer.ok ? '' : `${answer.where} ${answer.reason}`).toMatch(words);
});
