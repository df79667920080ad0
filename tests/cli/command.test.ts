/** The command as a process: what only the whole thing can show. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../house/source.ts';
import { examplePath, exampleText } from './stand.ts';

const command = join(projectFolder, 'bin', 'boughlight.mjs');

function boughlight(args: readonly string[], input = '') {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], {
    input,
    encoding: 'utf8',
  });
  return { code: status, out: stdout, err: stderr };
}

describe('the command boughlight, run from a checkout', { timeout: 120_000 }, () => {
  it('tells the version of the package', () => {
    const { version } = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8')) as {
      version: string;
    };
    expect(boughlight(['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' });
  });

  it('reads a file by its path and the same file from standard input', () => {
    const byPath = boughlight(['check', examplePath('young-whip')]);
    expect(byPath).toMatchObject({ code: 0, err: '' });
    expect(boughlight(['check', '-'], exampleText('young-whip'))).toEqual(byPath);
  });

  it('answers light as JSON and nothing else on standard output', () => {
    const { code, out, err } = boughlight([
      'light',
      examplePath('potted-fig-in-leaf'),
      '--json',
      '--waves',
      '2',
    ]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(out)).toMatchObject({ format: 'boughlight-light', version: 1, seed: 1 });
  });

  it.each([
    [['check', 'no-such-tree.json'], /no-such-tree\.json: there is no such file/],
    [['check', '.'], /this is a folder/],
    [['check', '-'], /standard input: /],
    [['light', examplePath('young-whip'), '--waves', 'many'], /--waves must be a whole number/],
  ])('refuses %j with exit code 2, words on standard error and nothing else', (args, words) => {
    const { code, out, err } = boughlight(args, '{"format": "a recipe"}');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(words);
  });
});
