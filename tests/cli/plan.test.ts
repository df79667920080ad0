import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { workCsv } from '../../src/document/workCsv.ts';
import type { Cut } from '../../src/plan/cut.ts';
import { madePlan } from './madePlan.ts';
import { answerOf, exampleText } from './stand.ts';

const files = { 'fig.json': exampleText('potted-fig-bud-break') };
const told = { files, plan: madePlan };

describe('boughlight plan', () => {
  it('says first what the plan is worth beside doing nothing', async () => {
    const { code, out, err } = await answerOf(['plan', 'fig.json'], told);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out.split('\n')[0]).toBe('14.3 ripe figs expected with this plan, 11.8 if nothing is done.');
    expect(out).toMatch(/^Shoots in deep shade +9 +0$/m);
  });

  it('gives each cut with what, where, why, gain and when, in the order of work', async () => {
    const { out } = await answerOf(['plan', 'fig.json'], told);
    const text = out.replace(/\s+/g, ' ');
    expect(text).toContain('2 cuts, in the order of work.');
    expect(text).toMatch(/ 1\. Take off .*Why: The wood is dead\. Gain: none in figs or light this season\./);
    expect(text).toMatch(/ 2\. Rub off this bud\. Go to the east limb, lateral 2\. 34 cm out from its fork,/);
    expect(text).toContain(
      'Gain: +0.9 ripe figs; +21 cm of wood in fruiting light; light: Shoot 2 on East limb, lateral 2 +9 %.',
    );
    expect(text).toContain('When: 2027-04-08 to 2027-05-02.');
    expect(text).toContain('Note: No tip needs cutting.');
  });

  it('gives with --csv the very table that the page saves, what is advised ticked', async () => {
    const read = parseTreeFile(files['fig.json']);
    if (!read.ok) throw new Error(read.reason);
    const { viewpoint } = read.file.site;
    const call = { ...(madePlan.cuts[1] as Cut), id: 'a-call' };
    const plan = { ...madePlan, yourCall: [call] };
    const { code, out } = await answerOf(['plan', 'fig.json', '--csv', '--units', 'us'], { ...told, plan });
    const advised = new Set(madePlan.cuts.map(({ id }) => id));
    expect({ code, out }).toEqual({ code: 0, out: workCsv(plan, advised, 'us', viewpoint) });
    expect(out.trimEnd().split(/\r?\n/).at(-1)).toMatch(/^3,"no","your call",/);
  });

  it('says once what holds for every cut, and with a cut what holds for it', async () => {
    const { out } = await answerOf(['plan', 'fig.json'], told);
    expect(out.match(/sap irritates/g)).toHaveLength(1);
    expect(out.indexOf('sap irritates')).toBeLessThan(out.indexOf('1. '));
    expect(out.match(/ladder/g)).toHaveLength(1);
    expect(out.indexOf('ladder')).toBeGreaterThan(out.indexOf('1. '));
  });

  it('keeps its lines short enough to print', async () => {
    const { out } = await answerOf(['plan', 'fig.json'], told);
    expect(out.split('\n').filter((line) => line.length > 100)).toEqual([]);
  });

  it('gives feet and inches when asked, in the text as in the JSON', async () => {
    const text = (await answerOf(['plan', 'fig.json', '--units', 'us'], told)).out;
    const json = JSON.parse((await answerOf(['plan', 'fig.json', '--units', 'us', '--json'], told)).out);
    expect(text).toContain('13 1/2 in');
    expect(text).not.toMatch(/\d c?m\b/);
    expect(json.cuts[1].where).toContain('13 1/2 in');
    expect(json.cuts[1].place.fromForkM).toBe(0.343);
  });

  it('gives other programs words and data side by side', async () => {
    const { out } = await answerOf(['plan', 'fig.json', '--json'], told);
    const json = JSON.parse(out);
    expect(json).toMatchObject({
      format: 'boughlight-plan',
      version: 1,
      date: '2027-04-08',
      score: madePlan.score,
    });
    expect(json.cuts[1]).toMatchObject({
      id: 'rub-off-bud.east-2-b3',
      kind: 'rub off bud',
      target: 'east-2-b3',
      reasons: [expect.stringContaining('11 % of open sky')],
      evidence: madePlan.cuts[1]?.reasons,
      when: { from: '2027-04-08', to: '2027-05-02' },
      caution: expect.stringContaining('Fig sap irritates'),
    });
  });

  it('says so when nothing needs cutting', async () => {
    const plan = { ...madePlan, cuts: [], remarks: [] };
    expect((await answerOf(['plan', 'fig.json'], { files, plan })).out).toMatch(
      /\nNothing needs cutting\.\n$/,
    );
  });
});
