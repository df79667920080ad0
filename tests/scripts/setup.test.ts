import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { projectFolder } from '../house/source.ts';

it('an install that would empty another folder through a link is refused, and that folder stays as it is', () => {
  const folder = mkdtempSync(join(tmpdir(), 'boughlight-'));
  const [checkout, other] = [join(folder, 'checkout'), join(folder, 'other')];
  mkdirSync(join(checkout, 'scripts'), { recursive: true });
  mkdirSync(other);
  writeFileSync(join(other, 'kept.txt'), 'kept');
  for (const name of ['setup.mjs', 'fingerprint.mjs'])
    cpSync(join(projectFolder, 'scripts', name), join(checkout, 'scripts', name));
  writeFileSync(join(checkout, 'package-lock.json'), '{}');
  symlinkSync(other, join(checkout, 'node_modules'), 'dir');
  const done = spawnSync(process.execPath, [join(checkout, 'scripts', 'setup.mjs'), 'all'], {
    encoding: 'utf8',
  });
  const left = readdirSync(other);
  rmSync(folder, { recursive: true });
  expect({ status: done.status, out: done.stdout, left }).toEqual({ status: 1, out: '', left: ['kept.txt'] });
  expect(done.stderr).toMatch(/^node_modules is a link/);
});

it.each([
  ['all is left in', 'vitest', 'all', false],
  ['what the tests need is left out of', 'react', 'start', true],
])('%s a folder installed by hand with %s', (_, found, stamp, isOmitting) => {
  const checkout = mkdtempSync(join(tmpdir(), 'boughlight-'));
  mkdirSync(join(checkout, 'scripts'));
  mkdirSync(join(checkout, 'node_modules', found), { recursive: true });
  writeFileSync(join(checkout, 'node_modules', found, 'package.json'), '{}');
  for (const name of ['setup.mjs', 'fingerprint.mjs'])
    cpSync(join(projectFolder, 'scripts', name), join(checkout, 'scripts', name));
  writeFileSync(join(checkout, 'package-lock.json'), '{}');
  const npm = join(checkout, 'npm.js');
  writeFileSync(npm, `require('fs').writeFileSync('asked.txt', process.argv.slice(2).join(' '))`);
  const done = spawnSync(process.execPath, [join(checkout, 'scripts', 'setup.mjs'), 'start'], {
    encoding: 'utf8',
    env: { ...process.env, npm_execpath: npm },
  });
  const asked = readFileSync(join(checkout, 'asked.txt'), 'utf8');
  const stamped = readFileSync(join(checkout, 'node_modules', '.boughlight-stamp'), 'utf8');
  rmSync(checkout, { recursive: true });
  expect({ status: done.status, stamp: stamped.split(' ')[0] }).toEqual({ status: 0, stamp });
  expect(asked.includes('--omit=dev')).toBe(isOmitting);
});
