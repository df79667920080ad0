import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { circles, emptyNamesIn, hiddenInputs, overlong, wrongImports } from './faults.ts';
import { rooms } from './rooms.ts';
import { projectFolder, readSources, type SourceFile } from './source.ts';

const files = readSources();

const sample = (path: string, text: string): SourceFile => ({ path, text });

describe('the imports of src', () => {
  it('follow the table of rooms', () => {
    expect(files.length).toBeGreaterThan(30);
    expect(wrongImports(files)).toEqual([]);
  });

  it('run in no circle', () => {
    expect(circles(files)).toEqual([]);
  });

  it.each([
    [
      'a room below that reaches up',
      'growth/x.ts',
      "import { a } from '../light/a.ts';",
      'growth may not import light',
    ],
    [
      'a type as much as a value',
      'light/x.ts',
      "import type { A } from '../plan/a.ts';",
      'light may not import plan',
    ],
    [
      'a type inside a type',
      'season/x.ts',
      "type A = import('../plan/a.ts').A;",
      'season may not import plan',
    ],
    ['a re-export', 'engine/x.ts', "export * from '../ui/a.ts';", 'engine may not import ui'],
    ['a late import', 'cli/x.ts', "await import('../editor/a.ts');", 'cli may not import editor'],
    [
      'a worker by its address',
      'engine/x.ts',
      "new URL('../ui/a.ts', import.meta.url);",
      'engine may not import ui',
    ],
    [
      'an import with a loader',
      'engine/x.ts',
      "import u from '../ui/a.ts?worker&url';",
      'engine may not import ui',
    ],
    ['a package in a pure room', 'geometry/x.ts', "import 'three';", 'may not use the package three'],
    [
      'the sun library outside its file',
      'light/x.ts',
      "import s from 'suncalc';",
      'may not use the package suncalc',
    ],
    [
      'React outside the page',
      'editor/x.ts',
      "import { useState } from 'react';",
      'may not use the package react',
    ],
    [
      'the store with React in it',
      'editor/x.ts',
      "import { create } from 'zustand';",
      'may not use the package zustand',
    ],
    ['Node in the engine', 'engine/x.ts', "import 'node:fs';", 'may not use the package node:fs'],
    ['a file outside src', 'plan/x.ts', "import { a } from '../../tests/a.ts';", 'from outside src'],
    ['a room nobody knows', 'attic/x.ts', "import { a } from '../geometry/a.ts';", 'there is no room attic'],
  ])('are refused for %s', (_, path, text, fault) => {
    expect(wrongImports([sample(path, text)])).toEqual([expect.stringContaining(fault)]);
  });

  it('are let through where the table allows them', () => {
    const allowed = [
      sample('light/sun.ts', "import { getPosition } from 'suncalc';"),
      sample('document/x.ts', "import * as z from 'zod';"),
      sample('ui/scene/x.tsx', "import { Canvas } from '@react-three/fiber';"),
      sample('cli/x.ts', "import { readFile } from 'node:fs/promises';"),
      sample('plan/rules/x.ts', "import type { A } from '../../geometry/a.ts';"),
    ];
    expect(wrongImports(allowed)).toEqual([]);
  });

  it('are seen to run in a circle, a circle of types too', () => {
    const round = [
      sample('plan/a.ts', "import type { B } from './b.ts';"),
      sample('plan/b.ts', "import { c } from './rules/c.ts';"),
      sample('plan/rules/c.ts', "export { a } from '../a.ts';"),
      sample('plan/d.ts', "import { a } from './a.ts';"),
    ];
    expect(circles(round)).toEqual(['plan/a.ts > plan/b.ts > plan/rules/c.ts > plan/a.ts']);
  });
});

describe('the pure rooms', () => {
  it('are given the time and chance, and never ask for them', () => {
    expect(hiddenInputs(files)).toEqual([]);
  });

  it.each(['Math.random()', 'Date.now()', 'new Date()', 'Date()', 'performance.now()'])(
    'are caught at %s',
    (call) => {
      expect(hiddenInputs([sample('light/x.ts', `export const a = () => ${call};`)])).toHaveLength(1);
    },
  );

  it('may work with a date they were given', () => {
    expect(hiddenInputs([sample('season/x.ts', 'export const a = (ms: number) => new Date(ms);')])).toEqual(
      [],
    );
  });
});

describe('the rooms', () => {
  it('each have a README of a few lines', () => {
    const folders = readdirSync(join(projectFolder, 'src'), { withFileTypes: true }).filter((e) =>
      e.isDirectory(),
    );
    const without = folders.filter(({ name }) => !existsSync(join(projectFolder, 'src', name, 'README.md')));
    expect(without.map(({ name }) => name)).toEqual([]);
  });

  it('are those of the table', () => {
    const folders = readdirSync(join(projectFolder, 'src'), { withFileTypes: true }).filter((e) =>
      e.isDirectory(),
    );
    expect(folders.map(({ name }) => name).sort()).toEqual(
      Object.keys(rooms)
        .filter((name) => name !== 'index')
        .sort(),
    );
  });

  it('have files and folders with names that say something', () => {
    expect(emptyNamesIn(files.map(({ path }) => path))).toEqual([]);
    expect(emptyNamesIn(['light/utils/a.ts', 'plan/helpers.ts', 'growth/leaf.ts'])).toHaveLength(2);
  });

  it('have no file of more than 300 lines', () => {
    expect(overlong(files)).toEqual([]);
    expect(overlong([sample('plan/x.ts', 'let a;\n'.repeat(301))])).toEqual(['plan/x.ts: 301 lines']);
  });

  it('have a public core that re-exports and does nothing else', () => {
    const index = files.find(({ path }) => path === 'index.ts');
    const statements = (index?.text ?? '').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '').split(';');
    const others = statements
      .map((s) => s.trim())
      .filter((s) => s !== '' && !/^export\s[\s\S]*\sfrom\s'[^']+'$/.test(s));
    expect(index).toBeDefined();
    expect(others).toEqual([]);
  });
});
