/** The columns of the table of branches: what each shows, and what is done with what is typed or pasted into it. */
import { axisOf, type Edit } from '../../../../editor/edit.ts';
import { changeBud } from '../../../../editor/edits/bud.ts';
import { type Description, describe } from '../../../../editor/edits/describe.ts';
import { move } from '../../../../editor/edits/move.ts';
import { pinPart } from '../../../../editor/edits/pin.ts';
import { reshape, type Shape } from '../../../../editor/edits/reshape.ts';
import { aroundParentDeg, turnRound } from '../../../../editor/edits/turnRound.ts';
import { branchFigures } from '../../../../editor/figures.ts';
import { quantities } from '../../../fields/quantities.ts';
import { conditionOptions, figOptions, kindOptions, pinOptions } from '../options.ts';
import { bearingOfWords } from './bearingOfWords.ts';
import { type Column, chosen, figure, ofBranch, plainText } from './column.ts';
import { leafColumns } from './leafColumns.ts';
import type { GridRow } from './rows.ts';
import { gridWords as words } from './words.ts';

const say =
  ({ axis }: GridRow, change: Description): Edit =>
  (file) =>
    describe(file, axis.id, change);
const shape =
  ({ axis }: GridRow, change: Shape): Edit =>
  (file) =>
    reshape(file, axis.id, change);

const name: Column = {
  id: 'name',
  head: words.heads.name,
  quantity: null,
  isFigure: false,
  text: ({ axis, bud }) => (bud === null ? axis.name : words.bud(axis.buds.indexOf(bud) + 1)),
  choices: () => null,
  edit: (row, text) => (row.bud === null ? say(row, { name: text }) : 'fixed'),
};

const kind: Column = {
  id: 'kind',
  head: words.heads.kind,
  quantity: null,
  isFigure: false,
  text: ({ axis, bud }) => (bud === null ? words.kinds[axis.kind] : words.budKind),
  choices: ({ axis, bud }) => (bud === null && axis.parentId !== null ? kindOptions : null),
  edit: (row, text) => {
    if (row.bud !== null || row.axis.parentId === null) return 'fixed';
    const value = chosen(kindOptions, text);
    return value === null ? null : say(row, { kind: value });
  },
};

const on: Column = {
  id: 'on',
  head: words.heads.on,
  quantity: null,
  isFigure: false,
  text: ({ axis, bud }, file) =>
    bud === null ? (file.axes.find((one) => one.id === axis.parentId)?.name ?? '') : axis.name,
  choices: ({ axis, bud }, file) =>
    bud === null && axis.parentId !== null
      ? file.axes.filter((one) => one.id !== axis.id).map((one) => ({ value: one.id, text: one.name }))
      : null,
  edit: (row, text, file) => {
    const { axis, bud } = row;
    if (bud !== null || axis.parentId === null) return 'fixed';
    const parent = file.axes.find((one) => plainText(one.name) === plainText(text) || one.id === text);
    if (parent === undefined) return null;
    return (next) => move(next, axis.id, parent.id, Math.min(axis.atM, branchFigures(parent).lengthM));
  },
};

const condition: Column = {
  id: 'condition',
  head: words.heads.condition,
  quantity: null,
  isFigure: false,
  text: ({ axis, bud }) => (bud === null ? words.conditions[axis.condition] : ''),
  choices: ({ bud }) => (bud === null ? conditionOptions : null),
  edit: (row, text) => {
    if (row.bud !== null) return 'fixed';
    const value = chosen(conditionOptions, text);
    return value === null ? null : say(row, { condition: value });
  },
};

const figs: Column = {
  id: 'figs',
  head: words.heads.figs,
  quantity: null,
  isFigure: false,
  text: ({ axis, bud }) =>
    bud !== null || axis.bearsFigs === undefined ? '' : words.figs[axis.bearsFigs ? 'yes' : 'no'],
  choices: ({ bud }) => (bud === null ? figOptions : null),
  edit: (row, text) => {
    if (row.bud !== null) return 'fixed';
    const value = chosen(figOptions, text);
    return value === null ? null : say(row, { bearsFigs: value === 'yes' });
  },
};

const pin: Column = {
  id: 'pin',
  head: words.heads.pin,
  quantity: null,
  isFigure: false,
  text: ({ axis, bud }) => words.pins[(bud === null ? axis.pin : bud.pin) ?? 'free'],
  choices: () => pinOptions,
  edit: (row, text) => {
    const value = chosen(pinOptions, text);
    return value === null ? null : (file) => pinPart(file, row.id, value === 'free' ? null : value);
  },
};

export const columns: readonly Column[] = [
  name,
  figure(
    'at',
    quantities.wood,
    ({ axis, bud }) => bud?.atM ?? (axis.parentId === null ? null : axis.atM),
    ({ axis, bud }, atM) =>
      (file) =>
        bud === null
          ? move(file, axis.id, axisOf(file, axis.id).parentId ?? '', atM)
          : changeBud(file, bud.id, { atM }),
  ),
  figure(
    'around',
    quantities.turn,
    ({ axis, bud }, file) => bud?.aroundDeg ?? aroundParentDeg(file, axis),
    ({ axis, bud }, aroundDeg) =>
      (file) =>
        bud === null ? turnRound(file, axis.id, aroundDeg) : changeBud(file, bud.id, { aroundDeg }),
  ),
  figure(
    'length',
    quantities.wood,
    ofBranch((axis) => branchFigures(axis).lengthM),
    (row, lengthM) => shape(row, { lengthM }),
  ),
  figure(
    'side',
    quantities.bearing,
    ofBranch((axis) => branchFigures(axis).bearingDeg),
    (row, bearingDeg) => shape(row, { bearingDeg }),
    (text, units) => bearingOfWords(text) ?? quantities.bearing.read(text, units),
  ),
  figure(
    'upright',
    quantities.angle,
    ofBranch((axis) => branchFigures(axis).fromUprightDeg),
    (row, fromUprightDeg) => shape(row, { fromUprightDeg }),
  ),
  figure(
    'base',
    quantities.thickness,
    ofBranch((axis) => axis.baseDiameterM),
    (row, baseDiameterM) => say(row, { baseDiameterM }),
  ),
  figure(
    'tip',
    quantities.thickness,
    ofBranch((axis) => axis.tipDiameterM),
    (row, tipDiameterM) => say(row, { tipDiameterM }),
  ),
  ...leafColumns,
  figure(
    'buds',
    quantities.count,
    ofBranch((axis) => axis.buds.length),
    (row, budCount) => say(row, { budCount }),
  ),
  kind,
  on,
  condition,
  figs,
  pin,
];
