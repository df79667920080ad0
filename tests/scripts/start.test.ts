import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../house/source.ts';

describe('starting the page', () => {
  it.each([
    [['--prot', '4000'], /'--prot'.*There is one option: --port N/],
    [['--port', 'many'], /--port: a whole number from 1 to 65535 is needed, got many/],
    [['--port', '70000'], /got 70000/],
  ])('with %j says what is wrong in a line and does nothing', (args, words) => {
    const script = join(projectFolder, 'scripts', 'start.mjs');
    const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...args], { encoding: 'utf8' });
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(words);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });
});
