import { expect, test } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { withEpw } from '../../src/document/withEpw.ts';
import { writeTreeFile } from '../../src/document/writeTreeFile.ts';
import { madeEpw } from '../season/epw/madeEpw.ts';
import { sampleFile } from './sampleFiles.ts';

const tree = sampleFile('potted-fig-bud-break');
const { latitudeDeg, longitudeDeg, elevationM } = tree.site;
const near = { latitudeDeg: latitudeDeg + 0.1, longitudeDeg: longitudeDeg - 0.1, zoneH: 1, years: [2006] };

test('weather of a place near by goes into the tree file, which then reads and writes as any other', () => {
  const answer = withEpw(tree, madeEpw(near).text);
  if (!answer.ok) throw new Error(answer.reason);
  expect(answer.file.site.frost).toEqual(tree.site.frost);
  expect(answer.file.axes).toBe(tree.axes);
  const again = parseTreeFile(writeTreeFile(answer.file));
  expect(again.ok && again.file.site.climate).toEqual(answer.file.site.climate);
  expect(again.ok && again.notes).toEqual([]);
});

test('says how far and how much higher the weather was taken', () => {
  const away = { ...near, latitudeDeg: latitudeDeg + 3.1, longitudeDeg };
  const text = madeEpw(away).text.replace('137.0', String(elevationM + 431));
  const answer = withEpw(tree, text);
  expect(answer.ok && answer.notes).toEqual([
    'The weather is of a place 345 km away.',
    'The weather is of a place 431 m higher than the tree.',
  ]);
});

test('refuses weather of a place where the sun keeps other hours', () => {
  const answer = withEpw(tree, madeEpw({ ...near, latitudeDeg: latitudeDeg - 5.3 }).text);
  expect(answer.ok ? '' : answer.reason).toMatch(/other hours/);
  const upsideDown = withEpw(tree, madeEpw({ ...near, latitudeDeg: -latitudeDeg }).text);
  expect(upsideDown.ok).toBe(false);
});

test('hands on why a weather file cannot be read', () => {
  expect(withEpw(tree, 'nothing')).toMatchObject({ ok: false, where: 'line 1' });
});
