/** Reading a tree file: size, text, depth, JSON, format and version, migrations, shape, meaning. */
import { understand } from './meaning/meaning.ts';
import { type Migration, migrate, migrations, oldestVersion, type RawFile } from './migrations.ts';
import { readJson } from './readText.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';
import { namedPlace, readShape } from './shape.ts';
import { currentVersion, formatName, type TreeFile } from './treeFile.ts';

export interface Accepted {
  readonly ok: true;
  readonly file: TreeFile;
  /** What was put right or looks odd, a sentence each, for the grower. */
  readonly notes: readonly string[];
}

function readFormat(value: unknown): { readonly raw: RawFile } | Refusal {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refuse(
      'the whole file',
      'This is not a tree file: it holds no named values. Open a file that Boughlight saved.',
    );
  }
  const raw = value as RawFile;
  const format = Object.hasOwn(raw, 'format') ? raw['format'] : undefined;
  if (format === formatName) return { raw };
  return refuse(
    'format',
    `This is not a tree file: its format must be "${formatName}", got ${quoted(format)}. Open a file that Boughlight saved.`,
  );
}

function readVersion(
  raw: RawFile,
  steps: readonly Migration[],
  target: number,
): { readonly version: number } | Refusal {
  const version = Object.hasOwn(raw, 'version') ? raw['version'] : undefined;
  if (typeof version !== 'number' || !Number.isInteger(version)) {
    return refuse(
      'version',
      `The version must be a whole number, got ${quoted(version)}. Open an older copy, or set it to ${target}.`,
    );
  }
  if (version > target) {
    return refuse(
      'version',
      `The file has version ${version}; this Boughlight reads up to ${target}. Open it with a newer Boughlight: an older one would lose what it does not know.`,
    );
  }
  const oldest = oldestVersion(target, steps);
  if (version >= oldest) return { version };
  return refuse(
    'version',
    `There is no version ${version} of the tree file; the first is ${oldest}. The file was damaged or edited by hand.`,
  );
}

/**
 * A tree file from text or UTF-8 bytes. Everything in the result is new; nothing of the input is kept or
 * changed. Never throws on what a file may hold: what cannot be used is refused with reason and place.
 */
export function parseTreeFile(input: string | Uint8Array): Accepted | Refusal {
  const json = readJson(input);
  if (!('value' in json)) return json;
  const format = readFormat(json.value);
  if (!('raw' in format)) return format;
  const found = readVersion(format.raw, migrations, currentVersion);
  if (!('version' in found)) return found;
  const { file: current, taken } = migrate(format.raw, found.version, currentVersion);
  const shape = readShape(current);
  if (!shape.ok) return shape;
  const meant = understand(shape.file);
  if ('reason' in meant) return refuse(namedPlace(current, meant.place), meant.reason);
  const brought =
    taken.length > 0 ? [`The file was brought up from version ${found.version} to ${currentVersion}.`] : [];
  return { ok: true, file: meant.file, notes: [...brought, ...meant.notes] };
}
