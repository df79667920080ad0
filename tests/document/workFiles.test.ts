import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calendarText } from '../../src/document/calendar.ts';
import { csvText } from '../../src/document/csv.ts';
import { workCalendar } from '../../src/document/workCalendar.ts';
import { workCsv } from '../../src/document/workCsv.ts';
import { crowding, sampleCut } from '../ui/work/sampleCut.ts';

/** A plain reader of RFC 4180, written apart from the writer. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  let [cell, quoted] = ['', false];
  for (let i = 0; i < text.length; i++) {
    const c = text[i] as string;
    if (quoted) {
      if (c !== '"') cell += c;
      else if (text[i + 1] === '"') cell += text[++i] as string;
      else quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === ',' || (c === '\r' && text[i + 1] === '\n')) {
      rows.at(-1)?.push(cell);
      cell = '';
      if (c === '\r') {
        i++;
        rows.push([]);
      }
    } else cell += c;
  }
  rows.pop();
  return rows;
}

/** Lines with their folds undone, and values with their escapes undone (RFC 5545, 3.1 and 3.3.11). */
const unfolded = (text: string): string[] => text.replaceAll('\r\n ', '').split('\r\n').slice(0, -1);
const unescaped = (value: string): string =>
  value.replace(/\\([\\;,nN])/g, (_, mark: string) => (mark.toLowerCase() === 'n' ? '\n' : mark));

const printable = fc.string({ unit: 'grapheme', maxLength: 120 }).filter((text) => !/\p{Cc}/u.test(text));
const seed = 4180;

describe('a table for a spreadsheet', () => {
  it(`gives back what was written, whatever marks it holds (seed ${seed})`, () => {
    const safe = fc.string({ maxLength: 40 }).filter((text) => !/^["\s]*[=+\-@\t\r]/.test(text));
    fc.assert(
      fc.property(fc.array(fc.array(safe, { minLength: 1, maxLength: 4 }), { maxLength: 5 }), (rows) => {
        expect(readCsv(csvText(rows))).toEqual(rows);
      }),
      { seed, numRuns: 300 },
    );
  });

  it('lets no text pass for a formula, and leaves numbers below nought alone', () => {
    expect(csvText([['=1+1', '-3', '"=A1', -0.37, null, 'plain']])).toBe(
      `"'=1+1","'-3","'""=A1",-0.37,,"plain"\r\n`,
    );
  });

  it('has a row for every cut with the numbers of the list, ticked or not', () => {
    const cuts = [
      sampleCut('b1', crowding),
      sampleCut('limb-2', { rule: 'dead' }, { piece: 'Old "arm"' }, 'remove'),
    ];
    const rows = readCsv(
      workCsv({ cuts, yourCall: [sampleCut('b9', crowding)] }, new Set(['rub-off-bud:b1']), 'metric', null),
    );
    const column = (name: string) => rows.map((row) => row[rows[0]?.indexOf(name) ?? -1]).slice(1);
    expect(column('number')).toEqual(['1', '2', '3']);
    expect(column('advice')).toEqual(['advised', 'advised', 'your call']);
    expect(column('right_in')).toEqual(['', '', '']);
    expect(column('ticked')).toEqual(['yes', 'no', 'no']);
    expect(column('step')).toEqual(['crowding', 'dead and sick wood', 'crowding']);
    expect(column('along_m')).toEqual(['0.347', '0.347', '0.347']);
    expect(column('what')).toEqual(['Rub off this bud', 'Take off the old "arm"', 'Rub off this bud']);
    expect(column('figs_gained')).toEqual(['0.37', '0.37', '0.37']);
  });
});

describe('days of work in a calendar', () => {
  const stamp = '2030-04-11T07:31:09.123Z';
  const when = { from: '2030-12-30', to: '2030-12-31' };

  it(`is folded at 75 octets without splitting a character, and read back whole (seed ${seed})`, () => {
    fc.assert(
      fc.property(printable, printable, (title, text) => {
        const written = calendarText([{ uid: 'a/b/c', when, title, text }], stamp);
        for (const line of written.split('\r\n')) {
          expect(Buffer.byteLength(line, 'utf8')).toBeLessThanOrEqual(75);
        }
        const lines = unfolded(written);
        const value = (name: string) =>
          unescaped(lines.find((line) => line.startsWith(`${name}:`))?.slice(name.length + 1) ?? '?');
        expect(value('SUMMARY')).toBe(title);
        expect(value('DESCRIPTION')).toBe(text);
      }),
      { seed, numRuns: 300 },
    );
  });

  it('ends the day after the last, over the turn of a year, and lets no line end break out', () => {
    const lines = unfolded(
      calendarText(
        [{ uid: 'u', when, title: 'a; b, c\\', text: 'one\rATTENDEE:x\r\ntwo\n\u0007three' }],
        stamp,
      ),
    );
    expect(lines).toContain('DTSTART;VALUE=DATE:20301230');
    expect(lines).toContain('DTEND;VALUE=DATE:20310101');
    expect(lines).toContain('DTSTAMP:20300411T073109Z');
    expect(lines).toContain('SUMMARY:a\\; b\\, c\\\\');
    expect(lines).toContain('DESCRIPTION:one\\nATTENDEE:x\\ntwo\\nthree');
    expect(lines.filter((line) => line.startsWith('ATTENDEE'))).toEqual([]);
  });

  it('holds the cuts of a step together, with what to mind, under a name that stays', () => {
    const cuts = [
      sampleCut('b1', crowding),
      sampleCut('b2', crowding, { branch: 'West limb' }),
      sampleCut('limb-2', { rule: 'dead' }, { piece: 'Old arm' }, 'remove'),
    ];
    const file = { id: 'small-fig', name: 'Small fig' };
    const write = (at: string) => unfolded(workCalendar(cuts, null, file, 'metric', at));
    const lines = write(stamp);
    const titles = lines.filter((line) => line.startsWith('SUMMARY'));
    expect(titles).toEqual([
      'SUMMARY:Small fig: Buds to rub off (2)',
      'SUMMARY:Small fig: Dead and sick wood (1)',
    ]);
    const uids = (some: string[]) => some.filter((line) => line.startsWith('UID'));
    expect(uids(lines)).toEqual([
      'UID:small-fig/crowding/2030-04-19',
      'UID:small-fig/dead-and-sick-wood/2030-04-19',
    ]);
    expect(uids(write('2031-01-01T00:00:00.000Z'))).toEqual(uids(lines));
    const text = unescaped(lines.find((line) => line.startsWith('DESCRIPTION')) ?? '');
    expect(text).toContain('West limb: Bud 35 cm out, north side');
    expect(text).toContain('Fig sap irritates');
  });
});
