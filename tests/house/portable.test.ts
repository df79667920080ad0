import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesUnder } from '../../scripts/fingerprint.mjs';
import { projectFolder } from './source.ts';

/** Tracked files and those about to be; without git, all that a copy of the project brings with it. */
function ownFiles(): string[] {
  if (existsSync(join(projectFolder, '.git'))) {
    const args = ['-c', 'safe.directory=*', 'ls-files', '--cached', '--others', '--exclude-standard', '-z'];
    const list = execFileSync('git', args, { cwd: projectFolder, encoding: 'utf8' });
    return list.split('\0').filter((name) => name !== '' && existsSync(join(projectFolder, name)));
  }
  const notOurs = /^(node_modules|dist|coverage|test-results|playwright-report)\//;
  return filesUnder(['.'])
    .map((path) => path.slice(projectFolder.length + 1).replaceAll('\\', '/'))
    .filter((name) => !notOurs.test(name));
}

const isText = (name: string) => !/\.(png|jpg|webp|woff2|ico|glb|pdf)$/.test(name);

// Spelt so that this file does not find itself.
const machinePath = /(?<![\w.~])\/(?:[w]ork|[h]ome|[r]oot|[U]sers)\/\w|[A-Z]:\\Users/;
const registry = /https?:\/\/[^\s"'/]*(?:regi[s]try|mirr[o]r|artifa[c]t|np[m]js)/i;

const linesWith = (pattern: RegExp, name: string, text: string): string[] =>
  text
    .split('\n')
    .map((line, i) => (pattern.test(line) ? `${name}:${i + 1}: ${line.trim().slice(0, 120)}` : ''))
    .filter((found) => found !== '');

describe('the files of the project', () => {
  const texts = ownFiles()
    .filter(isText)
    .map((name) => ({ name, text: readFileSync(join(projectFolder, name), 'utf8') }));

  it('name no folder of anybody’s machine', () => {
    expect(texts.length).toBeGreaterThan(40);
    expect(texts.flatMap(({ name, text }) => linesWith(machinePath, name, text))).toEqual([]);
  });

  it('name no package server', () => {
    expect(texts.flatMap(({ name, text }) => linesWith(registry, name, text))).toEqual([]);
  });

  it('are searched with patterns that find such things', () => {
    expect(linesWith(machinePath, 'a', ['x', 'see ', 'home', 'mia', 'fig.json'].join('/'))).toHaveLength(1);
    expect(linesWith(registry, 'a', ['"https:', '', 'registry.example', 'zod.tgz'].join('/'))).toHaveLength(
      1,
    );
    expect(linesWith(machinePath, 'a', 'src/ui/work/list.ts')).toEqual([]);
  });
});

describe('the packages', () => {
  const lock = JSON.parse(readFileSync(join(projectFolder, 'package-lock.json'), 'utf8')) as {
    packages: Record<
      string,
      { resolved?: string; integrity?: string; dependencies?: object; devDependencies?: object }
    >;
  };
  const manifest = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8')) as {
    dependencies: Record<string, string>;
    devDependencies: Record<string, string>;
  };

  it('are locked by their contents and not by where they came from', () => {
    const entries = Object.entries(lock.packages).filter(([name]) => name !== '');
    expect(entries.length).toBeGreaterThan(50);
    expect(entries.filter(([, entry]) => entry.resolved !== undefined).map(([name]) => name)).toEqual([]);
  });

  it('are pinned exactly, in the lock as in the manifest', () => {
    const all = { ...manifest.dependencies, ...manifest.devDependencies };
    expect(Object.entries(all).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
    expect(lock.packages['']).toMatchObject({
      dependencies: manifest.dependencies,
      devDependencies: manifest.devDependencies,
    });
  });
});
