/** The command as a process: what only the whole thing can show. */
import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, mkdtempSync, openSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
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

  it('ends quietly when its reader has read enough', () => {
    const shell = spawnSync(
      'sh',
      [
        '-c',
        '{ "$0" "$1" light "$2" --waves 2 --json; echo "code $?" >&2; } | head -n 1',
        process.execPath,
        command,
        examplePath('potted-fig-in-leaf'),
      ],
      { encoding: 'utf8' },
    );
    expect({ out: shell.stdout, err: shell.stderr }).toEqual({ out: '{\n', err: 'code 0\n' });
  });

  it.runIf(existsSync('/dev/full'))('says so when its answer cannot be written', () => {
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(process.execPath, [command, '--help'], {
      stdio: ['ignore', full, 'pipe'],
      encoding: 'utf8',
    });
    closeSync(full);
    expect(status).toBe(1);
    expect(stderr).toMatch(/^boughlight: the answer cannot be written \(.*\)\.\n$/);
  });

  it('is found through a link from another folder', () => {
    const folder = mkdtempSync(join(tmpdir(), 'a folder of trees '));
    symlinkSync(command, join(folder, 'boughlight link.mjs'));
    const { status, stdout } = spawnSync(process.execPath, ['boughlight link.mjs', '--version'], {
      cwd: folder,
      encoding: 'utf8',
    });
    rmSync(folder, { recursive: true });
    expect({ code: status, out: stdout }).toEqual({
      code: 0,
      out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/),
    });
  });

  it.each([
    [['check', 'no-such-tree.json'], /no-such-tree\.json: there is no such file/],
    [['check', '.'], /this is a folder/],
    [['check', join(examplePath('young-whip'), 'inside')], /no such file: a part of the path is no folder/],
    [['check', '-'], /standard input: /],
    [['light', examplePath('young-whip'), '--waves', 'many'], /--waves must be a whole number/],
  ])('refuses %j with exit code 2, words on standard error and nothing else', (args, words) => {
    const { code, out, err } = boughlight(args, '{"format": "a recipe"}');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(words);
  });
});
