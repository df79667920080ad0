import { array, assert, constant, constantFrom, integer, oneof, property, record } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { writeTreeFile } from '../../src/document/writeTreeFile.ts';
import { axisOf, type Edit, type Edited } from '../../src/editor/edit.ts';
import { copyRound, mirror } from '../../src/editor/edits/copy.ts';
import { describe as describeBranch } from '../../src/editor/edits/describe.ts';
import {
  estimatedShoots,
  estimateLeaves,
  measureMidrib,
  measureTreeMidrib,
  sayLeavesFrom,
} from '../../src/editor/edits/leaves.ts';
import { markMany } from '../../src/editor/edits/many.ts';
import { reshape } from '../../src/editor/edits/reshape.ts';
import { setAlong } from '../../src/editor/edits/setAlong.ts';
import { split } from '../../src/editor/edits/split.ts';
import { turnRound } from '../../src/editor/edits/turnRound.ts';
import { midribSource } from '../../src/geometry/tree.ts';
import { smallTree } from './smallTree.ts';

function made(edited: Edited): TreeFile {
  if (!edited.ok) throw new Error(`refused: ${edited.reason}`);
  return edited.file;
}

const allIds = (file: TreeFile) => file.axes.map(({ id }) => id);
const guessed = (file: TreeFile, id: string, what: 'count' | 'midrib') =>
  made(sayLeavesFrom(file, id, what, 'estimated'));

/** Which leaves were counted or measured, and the values. */
const measuredOf = (file: TreeFile) =>
  file.axes.flatMap(({ id, foliage }) =>
    foliage === null
      ? []
      : [
          ...(foliage.source === 'measured' ? [[id, 'count', foliage.count] as const] : []),
          ...(midribSource(foliage) === 'measured' ? [[id, 'midribM', foliage.midribM] as const] : []),
        ],
  );

/** The value, where it still counts as measured. */
function valueOf(file: TreeFile, id: string, what: 'count' | 'midribM'): number | null {
  const { foliage } = axisOf(file, id);
  if (foliage === null) return null;
  const from = what === 'count' ? foliage.source : midribSource(foliage);
  return from === 'measured' ? foliage[what] : null;
}

describe('leaves that were counted and measured', () => {
  it('keep their mark in the file', () => {
    const file = made(describeBranch(guessed(smallTree, 'shoot-1', 'midrib'), 'shoot-1', { leafCount: 8 }));
    expect(axisOf(file, 'shoot-1').foliage).toEqual({
      count: 8,
      midribM: 0.17,
      source: 'measured',
      midribSource: 'estimated',
    });
    const read = parseTreeFile(writeTreeFile(file));
    expect(read.ok && axisOf(read.file, 'shoot-1').foliage).toEqual(axisOf(file, 'shoot-1').foliage);
    const measured = made(measureMidrib(file, 'shoot-1', 0.153));
    expect(axisOf(measured, 'shoot-1').foliage).toEqual({ count: 8, midribM: 0.153, source: 'measured' });
  });

  it('counted to be just as many as estimated, are counted from then on', () => {
    const file = made(describeBranch(guessed(smallTree, 'shoot-1', 'count'), 'shoot-1', { leafCount: 11 }));
    expect(axisOf(file, 'shoot-1').foliage?.source).toBe('measured');
  });

  it('are estimates on the copy of a limb and on the parts of a split one', () => {
    const copied = made(copyRound(smallTree, 'east', { count: 2, stepM: 0 }));
    const copies = copied.axes.slice(smallTree.axes.length).filter(({ foliage }) => foliage !== null);
    expect(copies.length).toBeGreaterThan(0);
    for (const { foliage } of copies) expect(foliage?.source).toBe('estimated');
    const parts = made(split(smallTree, 'shoot-1', 0.15));
    expect(axisOf(parts, 'shoot-1').foliage).toMatchObject({ source: 'estimated', midribSource: 'measured' });
  });

  it('are never changed by an edit that does not enter them (seed 6113)', () => {
    const ids = constantFrom(...allIds(smallTree));
    const part = record({ id: ids, n: integer({ min: 1, max: 97 }) });
    const acts: readonly ((id: string, n: number) => Edit)[] = [
      () => (file) => estimateLeaves(file, allIds(file), null),
      (_, n) => (file) => estimateLeaves(file, allIds(file), `2030-0${4 + (n % 6)}-17`),
      (_, n) => (file) => measureTreeMidrib(file, n < 15 ? null : 0.1 + n / 700),
      (id, n) => (file) => reshape(file, id, { lengthM: n / 113, bearingDeg: n }),
      (id, n) => (file) => turnRound(file, id, n),
      (id) => (file) => mirror(file, id),
      (id, n) => (file) => copyRound(file, id, { count: 2 + (n % 2), stepM: 0 }),
      (id, n) => (file) => markMany(file, [id], { condition: n % 2 === 0 ? 'dead' : 'live' }),
      (id, n) => (file) => describeBranch(file, id, { name: `Named ${n}`, budCount: n % 7 }),
      (id) => (file) =>
        setAlong(file, id, {
          what: 'shoots',
          count: 1,
          firstM: 0.01,
          spacingM: 0.1,
          aroundDeg: 13,
          divergenceDeg: 137,
          shootM: 0.21,
          leafCount: 5,
        }),
    ];
    const step = record({ act: integer({ min: 0, max: acts.length - 1 }), part });
    const starts = oneof(
      constant(smallTree),
      constant(guessed(smallTree, 'shoot-1', 'count')),
      constant(guessed(smallTree, 'shoot-2', 'midrib')),
    );
    let refusals = 0;
    let steps = 0;
    assert(
      property(starts, array(step, { minLength: 1, maxLength: 12 }), (start, plan) => {
        let file: TreeFile = start;
        for (const {
          act,
          part: { id, n },
        } of plan) {
          const edited = acts[act]?.(id, n)(file);
          steps++;
          if (edited?.ok === true) file = edited.file;
          else refusals++;
        }
        expect(measuredOf(start).map(([id, what]) => [id, what, valueOf(file, id, what)])).toEqual(
          measuredOf(start),
        );
      }),
      { seed: 6113, numRuns: 200 },
    );
    expect(refusals).toBeLessThan(steps / 2);
  });
});

describe('leaves that are estimated', () => {
  it('follow the length of the shoot and the day', () => {
    const file = guessed(smallTree, 'shoot-1', 'count');
    const at = (on: string | null) =>
      axisOf(made(estimateLeaves(file, ['shoot-1', 'shoot-2'], on)), 'shoot-1').foliage?.count ?? 0;
    expect(at('2030-05-19')).toBeGreaterThan(0);
    expect(at('2030-05-19')).toBeLessThan(at('2030-07-23'));
    const longer = made(reshape(file, 'shoot-1', { lengthM: 0.83 }));
    expect(axisOf(made(estimateLeaves(longer, ['shoot-1'], null)), 'shoot-1').foliage?.count).toBeGreaterThan(
      at(null),
    );
  });

  it('are refused where nothing is left to estimate, and before the first leaf is out', () => {
    expect(estimateLeaves(smallTree, ['shoot-1', 'trunk'], null)).toMatchObject({ ok: false });
    const file = guessed(smallTree, 'shoot-1', 'count');
    expect(estimatedShoots(file)).toEqual(['shoot-1']);
    expect(estimateLeaves(file, ['shoot-1'], file.season.budBreakOn)).toMatchObject({ ok: false });
  });

  it('take the size measured on the tree, and give it up again', () => {
    const file = guessed(guessed(smallTree, 'shoot-1', 'midrib'), 'shoot-1', 'count');
    const small = made(measureTreeMidrib(file, 0.14));
    const large = made(measureTreeMidrib(file, 0.23));
    const midribM = (one: TreeFile) => axisOf(one, 'shoot-1').foliage?.midribM ?? 0;
    expect(midribM(large) / midribM(small)).toBeCloseTo(23 / 14, 2);
    expect(axisOf(large, 'shoot-2').foliage).toEqual(axisOf(smallTree, 'shoot-2').foliage);
    expect(large.settings).toEqual({ leafMidribCm: 23 });
    expect(made(measureTreeMidrib(large, null)).settings).toEqual({});
    expect(measureTreeMidrib(file, 0.61)).toMatchObject({ ok: false });
    expect(measureMidrib(file, 'trunk', 0.2)).toMatchObject({ ok: false });
  });
});
