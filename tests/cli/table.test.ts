import { describe, expect, it } from 'vitest';
import { table, wrapped } from '../../src/cli/table.ts';

describe('a table of text', () => {
  it('is aligned by what letters take on a screen, whatever they are made of, and has no blanks at the ends of its lines', () => {
    const columns = [
      { title: 'Shoot', align: 'left' },
      { title: 'Light', align: 'right' },
      { title: '', align: 'left' },
    ] as const;
    const rows = [
      ['Côté est', '7 %', ''],
      ['北の枝', '13 %', 'dim'],
    ];
    expect(table(columns, rows)).toEqual(['Shoot     Light', 'Côté est    7 %', '北の枝     13 %  dim']);
  });

  it('refuses a row with a cell too few', () => {
    expect(() => table([{ title: 'a', align: 'left' }], [[]])).toThrow('table: a row needs 1 cells, got 0');
  });
});

describe('wrapped text', () => {
  it('is broken at blanks, begins its lines as told, and keeps a word that is too long', () => {
    const lines = ['1. Go to', '   the', '   south-east', '   limb'];
    expect(wrapped('Go to the south-east limb', 9, '1. ', '   ')).toEqual(lines);
    expect(wrapped('', 9)).toEqual(['']);
  });

  it('keeps a number with its fraction, its unit and its per cent sign', () => {
    const words = 'cut 6 1/2 in out and 3 ft 6 in up, at 7.4 cm, +4 %, by 2027 or so';
    expect(wrapped(words, 1)).toEqual([
      'cut',
      '6 1/2 in',
      'out',
      'and',
      '3 ft 6 in',
      'up,',
      'at',
      '7.4 cm,',
      '+4 %,',
      'by',
      '2027',
      'or',
      'so',
    ]);
  });
});
