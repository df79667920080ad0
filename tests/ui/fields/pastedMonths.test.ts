import { describe, expect, it } from 'vitest';
import { pastedMonths } from '../../../src/ui/fields/pastedMonths.ts';

const months = ['3', '4.5', '7', '11', '15', '18', '21', '20.5', '17', '12', '7', '4'];
const german = months.map((month) => month.replace('.', ','));

describe('twelve months pasted', () => {
  it.each([
    ['a row of cells', months.join('\t'), months],
    ['a row of cells with decimal commas', german.join('\t'), german],
    ['a column', `${german.join('\r\n')}\r\n`, german],
    ['a row with its label', `Mean\t${months.join('\t')}`, months],
    ['text with semicolons', german.join('; '), german],
    ['text with commas and blanks', months.join(', '), months],
    ['text with commas alone', months.join(','), months],
    ['text with blanks', german.join('  '), german],
    ['rows below their months', `Jan\tFeb\tMar\n${months.join('\t')}`, months],
  ])('are read from %s', (_, text, found) => {
    expect(pastedMonths(text)).toEqual([found]);
  });

  it('are read two columns at a time, months down or across', () => {
    const twoDown = months.map((month, i) => `Month ${i + 1}\t${month}\t${i - 5}`).join('\n');
    const nights = months.map((_, i) => String(i - 5));
    expect(pastedMonths(twoDown)).toEqual([months, nights]);
    expect(pastedMonths(`${months.join('\t')}\n${nights.join('\t')}`)).toEqual([months, nights]);
  });

  it.each([
    '',
    'warm',
    '17',
    '17,5',
    months.slice(1).join('\t'),
    [...months, '12'].join('\t'),
    months.with(4, 'x').join('\t'),
  ])('are not made up from %j', (text) => {
    expect(pastedMonths(text)).toBeNull();
  });
});
