/** Whether a parsed value has the shape of a tree file; what is wrong is told in plain words. */
import type * as z from 'zod';
import { quoted, type Refusal, refuse } from './refusal.ts';
import { type TreeFile, treeFileSchema } from './treeFile.ts';

/** More entries than any tree file may hold; refused before the schema looks at each of them. */
const longestList = 5000;
const mostValues = 600_000;

type Key = string | number;
export type Place = readonly Key[];

/** A place as `axes[3].atM`. */
export function placeText(place: Place): string {
  let text = '';
  for (const key of place) {
    if (typeof key === 'number') text += `[${key}]`;
    else text += `${text === '' ? '' : '.'}${quoted(key).slice(1, -1)}`;
  }
  return text === '' ? 'the whole file' : text;
}

/** The value at a place, as far as it exists. */
function valueAt(value: unknown, place: Place): unknown {
  let at = value;
  for (const key of place) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
    at = (at as Record<Key, unknown>)[key];
  }
  return at;
}

/** A place, and in brackets the name of the branch, wall or neighbour it is about. */
export function namedPlace(file: unknown, place: Place): string {
  for (let n = place.length; n > 0; n--) {
    if (typeof place[n - 1] !== 'number') continue;
    const name = valueAt(file, [...place.slice(0, n), 'name']);
    const shown = typeof name === 'string' ? quoted(name).slice(1, -1).trim() : '';
    if (shown !== '') return `${placeText(place)} (${shown})`;
  }
  return placeText(place);
}

/** Walks the value without recursion and stops at the first list that is far too long. */
function findOverlong(root: unknown): Refusal | null {
  const waiting: [unknown, Place][] = [[root, []]];
  let seen = 0;
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const [value, place] = next;
    if (typeof value !== 'object' || value === null) continue;
    const entries = Object.entries(value);
    seen += entries.length;
    if (entries.length > longestList || seen > mostValues) {
      return refuse(
        placeText(place),
        `There are too many entries here (${entries.length}); a list holds at most ${longestList}. Check that it is the right file.`,
      );
    }
    for (const [key, child] of entries)
      waiting.push([child, [...place, Array.isArray(value) ? Number(key) : key]]);
  }
  return null;
}

const kinds: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'a group of named values',
  record: 'a group of named values',
  null: 'null',
};

type Issue = z.core.$ZodIssue;

const among = (values: readonly unknown[]): string => values.slice(0, 8).map(quoted).join(', ');

/** What one finding of the schema means, as a sentence. */
function explain(issue: Issue, value: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      return value === undefined
        ? `This is missing; ${kinds[issue.expected] ?? issue.expected} is needed.`
        : `This must be ${kinds[issue.expected] ?? issue.expected}, got ${typeof value === 'number' ? 'a number out of all bounds' : quoted(value)}.`;
    case 'too_small':
      return `This must be ${bound(issue.origin, 'at least', issue.minimum)}, got ${measured(value)}.`;
    case 'too_big':
      return `This must be ${bound(issue.origin, 'at most', issue.maximum)}, got ${measured(value)}.`;
    case 'invalid_value':
      return `This must be ${issue.values.length === 1 ? '' : 'one of '}${among(issue.values)}, got ${quoted(value)}.`;
    case 'unrecognized_keys':
      return `There is no such entry: ${among(issue.keys)}. Things of other programs belong into "ext".`;
    case 'invalid_union':
      return `This must be of a known kind, got ${quoted(value)}.`;
    case 'invalid_format':
      return `This must be written as ${issue.format === 'date' ? 'YYYY-MM-DD' : issue.message}, got ${quoted(value)}.`;
    case 'custom':
    case 'invalid_element':
    case 'invalid_key':
    case 'not_multiple_of':
    default:
      return `This does not fit: ${quoted(value)}.`;
  }
}

const counted = new Set(['array', 'tuple', 'set', 'string']);

function bound(origin: string, word: string, limit: number | bigint): string {
  return counted.has(origin)
    ? `${word} ${limit} ${origin === 'string' ? 'characters' : 'entries'} long`
    : `${word} ${limit}`;
}

function measured(value: unknown): string {
  if (Array.isArray(value)) return `${value.length} entries`;
  return typeof value === 'string' ? `${value.length} characters` : quoted(value);
}

/** A fresh file with all defaults put in, or the first thing that does not fit. */
export function readShape(value: unknown): { readonly ok: true; readonly file: TreeFile } | Refusal {
  const overlong = findOverlong(value);
  if (overlong) return overlong;
  const parsed = treeFileSchema.safeParse(value);
  if (parsed.success) return { ok: true, file: parsed.data };
  const [first] = parsed.error.issues;
  if (!first) throw new Error('readShape: the schema refused without an issue');
  const place = first.path.map((key) => (typeof key === 'number' ? key : String(key)));
  const more = parsed.error.issues.length - 1;
  const rest = more > 0 ? ` ${more} more ${more === 1 ? 'place does' : 'places do'} not fit either.` : '';
  return refuse(namedPlace(value, place), `${explain(first, valueAt(value, place))}${rest}`);
}
