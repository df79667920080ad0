/** `boughlight day` and `boughlight sky`, with the real engine. */
import { describe, expect, it } from 'vitest';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import { answerOf, exampleText } from './stand.ts';

const files = { 'whip.json': exampleText('young-whip') };
const told = { files, makeEngine: createInPlaceEngine };

describe('boughlight day', () => {
  it('says from when to when the sun shines, then every shoot with its strip, the darkest first', async () => {
    const { code, out, err } = await answerOf(['day', 'whip.json', '--date', '2027-12-09'], told);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const lines = out.split('\n');
    expect(lines[0]).toMatch(
      /^Direct sun on 21 shoots on 2027-12-09: from 0\d:\d\d to \d\d:\d\d by the clock/,
    );
    expect(lines[2]).toBe(
      'Weather: from hours of sunshine of each month, which are a guess: put in figures of the place.',
    );
    const head = lines[4] as string;
    const stripAt = head.search(/\d/);
    const rows = lines.slice(5, 26);
    // A row's strip is as long as the day, in places of 20 minutes; its last place may be a part of one.
    const strips = rows.map((row) => row.slice(head.indexOf('mol/m²') + 8));
    expect(new Set(strips.map(({ length }) => length)).size).toBe(1);
    expect(strips.every((strip) => /^[#+.-]{40,47}$/.test(strip))).toBe(true);
    expect(stripAt).toBeGreaterThan(head.indexOf('mol/m²'));
    const hours = rows.map((row) => Number(row.match(/ (\d+\.\d) /)?.[1]));
    expect(hours).toEqual([...hours].sort((a, b) => a - b));
    // The hours are those that the strip shows, within what its four marks can tell.
    strips.forEach((strip, i) => {
      const litPlaces = strip.replaceAll('.', '').length;
      expect((hours[i] as number) * 3).toBeLessThanOrEqual(litPlaces + 0.2);
    });
  });

  it('looks at the day of the sketch when none is given, and at a clear day when asked', async () => {
    const { out } = await answerOf(['day', 'whip.json', '--json'], told);
    const clear = await answerOf(['day', 'whip.json', '--json', '--weather', 'clear'], told);
    const [normal, bright] = [JSON.parse(out), JSON.parse(clear.out)];
    expect(normal.date).toBe(JSON.parse(files['whip.json']).season.sketchedOn);
    expect(bright.openParMolM2Day).toBeGreaterThan(normal.openParMolM2Day);
    expect(normal.energy).toEqual({ basis: 'sunshine', source: 'guess' });
    expect(bright.energy.basis).toBe('clear sky');
    expect(bright.shoots[0].sunlit).toEqual(normal.shoots[0].sunlit);
    expect(normal).not.toHaveProperty('nodes');
  });
});

describe('boughlight sky', () => {
  const at = (shoot: string, node: string, ...more: string[]) =>
    answerOf(['sky', 'whip.json', '--shoot', shoot, '--node', node, ...more], told);

  it('says how much of the sky is open and draws it, by the name of a shoot or by its id', async () => {
    const { code, out } = await at('Shoot 21 on Whip', '2');
    expect(code).toBe(0);
    const lines = out.split('\n');
    expect(lines[0]).toMatch(
      /^From node 2 of Shoot 21 on Whip, [\d.]+ c?m above the ground, \d+ % of the sky is open: \d+ %/,
    );
    const drawn = lines.slice(3, 22);
    expect(drawn[9]).toMatch(/^[.o#=%^]{38}$/);
    expect(drawn[0]).toMatch(/^ {10,}[.o#=%^]+$/);
    const json = JSON.parse((await at('Shoot 21 on Whip', '2', '--json')).out);
    const again = JSON.parse((await at(json.shootId, '2', '--json')).out);
    expect(again).toEqual(json);
    expect(json.first).toHaveLength(json.size ** 2);
  });

  it('says which shoots and nodes there are when it is asked for another', async () => {
    expect(await at('Shoot 77', '1')).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining('no shoot in leaf is called Shoot 77; there are 21, such as'),
    });
    expect((await at('Shoot 21 on Whip', '900')).err).toMatch(/has nodes 1 to \d+, got --node 900/);
  });
});
