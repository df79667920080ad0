/** A terminal made of memory, and an engine that answers what it is told: for tests of the command alone. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { run } from '../../src/cli/run.ts';
import type { Workplace } from '../../src/cli/workplace.ts';
import type { Engine, LightOptions, PlanOptions, Replanned, Trial } from '../../src/engine/engine.ts';
import type { LightReport } from '../../src/engine/reports.ts';
import type { Plan } from '../../src/plan/plan.ts';

export const examplePath = (name: string): string =>
  fileURLToPath(new URL(`../../public/examples/${name}.json`, import.meta.url));

export interface Answered {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

interface Told {
  readonly light?: LightReport;
  readonly plan?: Plan;
  /** A real engine in place of one that answers what it is told. */
  readonly makeEngine?: () => Engine;
  /** Files by path, standard input as "-"; other paths do not exist. */
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  /** Takes the files that are written; without it none may be. */
  readonly written?: Map<string, Uint8Array>;
  /** Called with the options that reach the engine. */
  readonly seen?: (options: LightOptions | PlanOptions | undefined) => void;
}

const given = <T>(value: T | undefined): T => {
  if (value === undefined) throw new Error('stand: the engine was asked for something it was not told');
  return value;
};

const done = <T>(make: () => T) => ({ result: Promise.resolve().then(make), cancel: () => {} });

function standIn({ light, plan, seen }: Told): Engine {
  return {
    light: (_, options) => {
      seen?.(options);
      return done(() => ({ report: given(light), nodes: [], leaves: [] }));
    },
    plan: (_, options) => {
      seen?.(options);
      return done(() => given(plan));
    },
    replan: () => done(() => given<Replanned>(undefined)),
    tryCuts: () => done(() => given<Trial>(undefined)),
    look: () => done(() => given<never>(undefined)),
    takeWeather: () => done(() => given<never>(undefined)),
    dispose: () => {},
  };
}

function workplaceOf(told: Told, printed: { out: string; err: string }): Workplace {
  const files = told.files ?? {};
  const read = (path: string) => {
    const content = files[path];
    if (content === undefined)
      return Promise.reject(Object.assign(new Error('not there'), { code: 'ENOENT' }));
    return Promise.resolve(typeof content === 'string' ? new TextEncoder().encode(content) : content);
  };
  return {
    version: '3.7.1',
    makeEngine: told.makeEngine ?? (() => standIn(told)),
    terminal: {
      readFile: read,
      readInput: () => read('-'),
      writeFile: (path, bytes) => {
        if (told.written === undefined)
          return Promise.reject(Object.assign(new Error('not allowed'), { code: 'EACCES' }));
        told.written.set(path, bytes);
        return Promise.resolve();
      },
      out: (text) => {
        printed.out += text;
        return Promise.resolve();
      },
      err: (text) => {
        printed.err += text;
      },
      showProgress: null,
    },
  };
}

/** Runs the command on the stand. */
export async function answerOf(args: readonly string[], told: Told = {}): Promise<Answered> {
  const printed = { out: '', err: '' };
  const code = await run(args, workplaceOf(told, printed));
  return { code, ...printed };
}

export const exampleText = (name: string): string => readFileSync(examplePath(name), 'utf8');
