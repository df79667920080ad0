/**
 * Older versions of the tree file are brought up step by step, each step from one version to the next.
 * A step, once released, is never changed. Version 1 is the first, so there are no steps yet; a step to
 * version 2 goes into `migrations` together with a file of version 1 that stays in the tests for ever.
 */
export type RawFile = { readonly [key: string]: unknown };

export interface Migration {
  /** What it does, in a few words. */
  readonly name: string;
  /** It turns a file of this version into one of the next. */
  readonly from: number;
  /** Returns a new object; `version` is set by the caller. */
  readonly apply: (file: RawFile) => RawFile;
}

export const migrations: readonly Migration[] = [];

/** The file at version `target`, with the names of the steps taken. Throws when a step is missing from the list. */
export function migrate(
  file: RawFile,
  version: number,
  target: number,
  steps: readonly Migration[] = migrations,
): { readonly file: RawFile; readonly taken: readonly string[] } {
  let current = file;
  const taken: string[] = [];
  for (let from = version; from < target; from++) {
    const step = steps.find((s) => s.from === from);
    if (!step)
      throw new Error(`migrate: no step leads from version ${from}, got a file of version ${version}`);
    current = { ...step.apply(current), version: from + 1 };
    taken.push(step.name);
  }
  return { file: current, taken };
}

/** The oldest version that `steps` can bring up to `target`. */
export function oldestVersion(target: number, steps: readonly Migration[] = migrations): number {
  let version = target;
  while (steps.some((s) => s.from === version - 1)) version--;
  return version;
}
