import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
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
