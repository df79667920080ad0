import { describe, expect, it } from 'vitest';
import { answerOf, exampleText } from './stand.ts';

const files = { 'fig.json': exampleText('potted-fig-in-leaf'), '-': exampleText('potted-fig-bud-break') };

describe('boughlight check', () => {
  it('says of a good file what it holds', async () => {
    const { code, out, err } = await answerOf(['check', 'fig.json'], { files });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(
      /^This is a good tree file: .+, \d+ branches, \d+ buds?, \d+ shoots in leaf, \d+ leaves\.\n/,
    );
  });

  it('reads standard input, and answers as JSON', async () => {
    const { code, out } = await answerOf(['check', '-', '--json'], { files });
    const tree = JSON.parse(exampleText('potted-fig-bud-break')) as { axes: { buds: unknown[] }[] };
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      format: 'boughlight-check',
      version: 1,
      counts: { axes: tree.axes.length, buds: tree.axes.flatMap(({ buds }) => buds).length, leaves: 0 },
    });
  });

  it.each(['check', 'light', 'plan'])(
    'as %s refuses a bad file with its place, exit code 2 and no answer',
    async (word) => {
      const bad = JSON.parse(exampleText('potted-fig-bud-break')) as { axes: { atM: number }[] };
      (bad.axes[3] as { atM: number }).atM = -1.37;
      const { code, out, err } = await answerOf([word, 'bad.json', '--json'], {
        files: { 'bad.json': JSON.stringify(bad) },
      });
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toMatch(/^boughlight: bad\.json: axes\[3\]\.atM.*: .+\n$/);
    },
  );

  it.each([
    ['there.json', /^boughlight: there\.json: there is no such file\. Check the path\.\n$/],
    ['text.json', /^boughlight: text\.json: .+\n$/],
    ['picture.json', /^boughlight: picture\.json: .*UTF-8.*\n$/],
  ])('refuses %s', async (path, words) => {
    const odd = { 'text.json': 'a fig', 'picture.json': new Uint8Array([0x89, 0x50, 0xff, 0xfe]) };
    const { code, out, err } = await answerOf(['check', path], { files: odd });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(words);
  });
});

describe('boughlight', () => {
  it('answers misuse with exit code 2 and says where help is', async () => {
    const { code, out, err } = await answerOf(['prune']);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toBe(
      'boughlight: there is no command prune: say light, day, sky, plan, check or scene. See boughlight --help.\n',
    );
  });

  it('tells its commands and its version', async () => {
    expect((await answerOf(['--help'])).out).toMatch(/light FILE[\s\S]*plan FILE[\s\S]*check FILE/);
    expect((await answerOf(['--version'])).out).toBe('3.7.1\n');
  });

  it('answers a fault of its own with exit code 1', async () => {
    const { code, out, err } = await answerOf(['light', 'fig.json'], { files });
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('a fault of the program, not of your file');
  });
});
