/**
 * Files that must be refused, made from the samples by rule and by seed; numbered classes as in the list of
 * bad input: text, truncation, bits, depth, size, names of prototypes, numbers, graphs, versions.
 */
import { gzipSync } from 'node:zlib';
import { random01 } from '../../src/geometry/random.ts';
import { changedSample, type LooseFile, sampleText } from '../document/sampleFiles.ts';

export interface BadText {
  readonly name: string;
  readonly text: string;
}

export interface BadFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

const id = 'potted-fig-bud-break' as const;
const whole = sampleText(id);
const bytes = new TextEncoder().encode(whole);

type Change = (file: LooseFile) => void;
const changed = (name: string, change: Change): BadText => ({ name, text: changedSample(id, change) });

const latitude = /"latitudeDeg": [-\d.]+/;

/** Puts a raw piece of JSON where the first match of `pattern` is. */
const spliced = (name: string, pattern: RegExp, raw: string): BadText => {
  const text = whole.replace(pattern, raw);
  if (text === whole) throw new Error(`spliced: ${pattern} is not in the sample`);
  return { name, text };
};

const set =
  (place: readonly (string | number)[], value: unknown): Change =>
  (file) => {
    let at = file as unknown as Record<string | number, unknown>;
    for (const key of place.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
    at[place.at(-1) as string | number] = value;
  };

const fence = (odd: object): object => ({
  kind: 'fence',
  name: 'Fence',
  from: [-2, 2],
  to: [2, 2],
  heightM: 1.8,
  thicknessM: 0.05,
  openFraction: 0.3,
  ...odd,
});

/** Class 1: no text, or not the right sort. */
export const wrongText: readonly BadFile[] = [
  { name: 'nothing', content: '' },
  { name: 'no bytes', content: new Uint8Array() },
  { name: 'spaces and lines', content: ' \n\t\r\n ' },
  { name: 'a byte order mark alone', content: '\ufeff' },
  { name: 'UTF-16 with its mark', content: new Uint8Array(Buffer.from(`\ufeff${whole}`, 'utf16le')) },
  { name: 'UTF-16 without mark', content: new Uint8Array(Buffer.from(whole, 'utf16le')) },
  {
    name: 'Latin-1 in a name',
    content: new Uint8Array(Buffer.from(whole.replace('Trunk', 'Tr\u00fcnk'), 'latin1')),
  },
  { name: 'a stray byte', content: Uint8Array.of(...bytes.subarray(0, 400), 0xff, ...bytes.subarray(400)) },
  { name: 'a picture', content: Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13) },
  { name: 'a packed tree file', content: new Uint8Array(gzipSync(whole)) },
  { name: 'an archive', content: Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0, 0, 0, 8, 0) },
  { name: 'prose', content: 'Dear Sir, please find my fig tree attached.' },
  { name: 'a web page', content: '<!doctype html><title>Not found</title>' },
  { name: 'a comma too many', content: whole.replace('"species": "fig",', '"species": "fig",,') },
  { name: 'a comment', content: whole.replace('"species"', '/* here */ "species"') },
  { name: 'bare NaN', content: whole.replace(latitude, '"latitudeDeg": NaN') },
  { name: 'bare Infinity', content: whole.replace(latitude, '"latitudeDeg": -Infinity') },
];

/** Class 2: the text cut off at every 64th byte. */
export const truncated: readonly BadFile[] = Array.from(
  { length: Math.floor(bytes.length / 64) },
  (_, i) => ({
    name: `cut off after ${64 * i} bytes`,
    content: bytes.slice(0, 64 * i),
  }),
);

/** Class 4: nests. */
export const deep: readonly BadFile[] = [
  ...[1e3, 1e5, 1e6].map((n) => ({
    name: `${n} lists in lists`,
    content: `${'['.repeat(n)}${']'.repeat(n)}`,
  })),
  ...[1e3, 1e5].map((n) => ({
    name: `${n} objects in objects`,
    content: `${'{"a":'.repeat(n)}1${'}'.repeat(n)}`,
  })),
  { name: 'a nest without end', content: '['.repeat(1e6) },
  {
    name: 'a deep ext',
    content: whole.replace('"axes"', `"ext": {"a": ${'['.repeat(40)}${']'.repeat(40)}}, "axes"`),
  },
];

/** Class 5: masses. */
export const huge: readonly BadFile[] = [
  { name: 'a name of 50 MB', content: `{"name": "${'x'.repeat(5e7)}"}` },
  { name: 'a million numbers', content: `[${'1,'.repeat(1e6)}1]` },
  {
    name: 'a million numbers for axes',
    content: whole.replace(/"axes": \[/, `"axes": [${'1,'.repeat(1e6)}`),
  },
  {
    name: 'a hundred thousand entries',
    content: `{${Array.from({ length: 1e5 }, (_, i) => `"k${i}":${i}`).join(',')}}`,
  },
  {
    name: 'a hundred thousand settings',
    content: whole.replace(
      '"settings": {}',
      `"settings": {${Array.from({ length: 1e5 }, (_, i) => `"k${i}":1`).join(',')}}`,
    ),
  },
  {
    name: 'a million points in a path',
    content: whole.replace(/"path": \[/, `"path": [${'[0,0,0],'.repeat(4e5)}`),
  },
];

/** Classes 6, 7, 9 and 11 where the shape is at fault. */
export const badShapes: readonly BadText[] = [
  spliced('__proto__ at the top', /"species"/, '"__proto__": {"polluted": 1}, "species"'),
  spliced('__proto__ in an axis', /"kind": "trunk"/, '"__proto__": {"polluted": 1}, "kind": "trunk"'),
  spliced('constructor.prototype', /"species"/, '"constructor": {"prototype": {"polluted": 1}}, "species"'),
  changed('toString as an entry', set(['toString'], 1)),
  changed('a number for an id', set(['axes', 1, 'id'], 7)),
  changed('__proto__ for an id', set(['axes', 1, 'id'], '__proto__')),
  changed('an id with a blank', set(['axes', 1, 'id'], 'se 1')),
  spliced('1e999 for a number', latitude, '"latitudeDeg": 1e999'),
  spliced('-1e999 for a coordinate', /\[0, 0, 0\]/, '[0, -1e999, 0]'),
  spliced('1e308 for a coordinate', /\[0, 0, 0\]/, '[0, 1e308, 0]'),
  spliced('a vanishing thickness', /"tipDiameterM": 0\.036/, '"tipDiameterM": 5e-324'),
  changed('text for a number', set(['site', 'latitudeDeg'], '47.13')),
  changed('null for a number', set(['site', 'latitudeDeg'], null)),
  changed('a list for a name', set(['name'], ['x'])),
  changed('an empty name', set(['axes', 0, 'name'], '')),
  changed('a name of 10 000 marks', set(['axes', 0, 'name'], `e${'\u0301'.repeat(10_000)}`)),
  changed('a note without end', set(['note'], 'x'.repeat(10_001))),
  changed('a point of two numbers', set(['axes', 1, 'path', 1], [0, 1])),
  changed('a point of four numbers', set(['axes', 1, 'path', 1], [0, 1, 0, 0])),
  changed(
    'eleven months',
    set(
      ['site', 'climate', 'meanC'],
      Array.from({ length: 11 }, () => 9),
    ),
  ),
  changed('no axes', set(['axes'], [])),
  changed('half a year', set(['axes', 0, 'grownIn'], 2021.5)),
  changed('a pot of 4 m', set(['standing', 'pot', 'topDiameterM'], 4)),
  changed('no such day', set(['season', 'sketchedOn'], '2025-02-29')),
  changed('no such month', set(['site', 'frost', 'lastOfSpring'], '13-01')),
  changed('a crown for a wall', set(['site', 'surroundings', 0, 'kind'], 'crown')),
  changed(
    'a fence that lets more through than comes',
    set(['site', 'surroundings', 0], fence({ openFraction: 1.2 })),
  ),
  changed('a fence without gaps named', set(['site', 'surroundings', 0], fence({ openFraction: undefined }))),
  changed('a hedge in a fence', set(['site', 'surroundings', 0], fence({ leafAreaDensityM2M3: 3 }))),
  changed('an empty skyline', set(['site', 'skyline'], { reflectance: 0.2, points: [] })),
  changed('a skyline of pairs', set(['site', 'skyline'], { reflectance: 0.2, points: [[0, 10]] })),
  changed(
    'a skyline overhead',
    set(['site', 'skyline'], { reflectance: 0.2, points: [{ bearingDeg: 3, heightDeg: 90 }] }),
  ),
  changed('walls that throw a little', set(['site', 'wallsThrowLight'], 0.4)),
  changed('a slope of 90 degrees', set(['site', 'slope'], { slopeDeg: 90, fallsToDeg: 180 })),
  changed('a slope without a way down', set(['site', 'slope'], { slopeDeg: 9 })),
  changed(
    'a cover that makes light',
    set(['site', 'cover'], { name: 'Film', passedFraction: 1.1, diffusingFraction: 0, dates: null }),
  ),
  changed(
    'a cover without dates',
    set(['site', 'cover'], { name: 'Film', passedFraction: 0.9, diffusingFraction: 0 }),
  ),
  changed('turns every half week', set(['standing', 'quarterTurnEveryWeeks'], 0.5)),
  changed('turns that are null', set(['standing', 'quarterTurnEveryWeeks'], null)),
  changed('another format', set(['format'], 'bough')),
  changed('version 0', set(['version'], 0)),
  changed('version -1', set(['version'], -1)),
  changed('version 1e9', set(['version'], 1e9)),
  changed('version "1"', set(['version'], '1')),
  changed('version 1.5', set(['version'], 1.5)),
  changed('no version', (file) => delete (file as unknown as Record<string, unknown>)['version']),
  changed('no format', (file) => delete (file as unknown as Record<string, unknown>)['format']),
  { name: 'a list', text: '[]' },
  { name: 'a number', text: '12' },
  { name: 'null', text: 'null' },
  { name: 'an object without anything', text: '{}' },
];

/** Class 8: right shape, impossible tree. */
export const badMeaning: readonly BadText[] = [
  changed('its own parent', set(['axes', 2, 'parentId'], 'se-1')),
  changed('two that grow from each other', set(['axes', 1, 'parentId'], 'se-1')),
  changed('an orphan', set(['axes', 2, 'parentId'], 'nowhere')),
  changed('a parent called constructor', set(['axes', 2, 'parentId'], 'constructor')),
  changed('two roots', set(['axes', 2, 'parentId'], null)),
  changed('an id twice', set(['axes', 2, 'id'], 'trunk')),
  changed(
    'no length',
    set(
      ['axes', 2, 'path'],
      [
        [0, 0, 0],
        [0, 0, 0],
      ],
    ),
  ),
  changed('thicker than its parent', set(['axes', 2, 'baseDiameterM'], 1.4)),
  changed('beyond its parent', set(['axes', 2, 'atM'], 31)),
  changed('a bud in the air', set(['axes', 2, 'buds', 0, 'atM'], 31)),
  changed('no such zone', set(['site', 'timeZone'], '../../etc')),
  changed('a setting called __proto__.x', set(['settings'], { constructor: 1 })),
];

/** Classes 6 and 9: ugly, but nothing to refuse. What is read must be clean. */
export const uglyButGood: readonly BadText[] = [
  ...[
    '<img src=x onerror=alert(1)>',
    '</script><script>alert(1)</script>',
    '</text><script>alert(1)</script>',
    'javascript:alert(1)',
    '\u202eevil\u202c',
    `e${'\u0301'.repeat(150)}`,
    '\u{1f468}\u200d\u{1f469}\u200d\u{1f467}',
    'a\u0000b',
    'a\r\nb',
    "=cmd|'/C calc'!A0",
    '@SUM(A1)',
    'x\r\nATTENDEE:y',
    '\ud800 half',
  ].map((name) => changed(`the name ${JSON.stringify(name)}`, set(['axes', 1, 'name'], name))),
  spliced('an entry twice: the last counts', /"species": "fig"/, '"species": "pear", "species": "fig"'),
  spliced('minus nothing', /\[0, 0, 0\]/, '[-0, -0.0, 0]'),
  spliced(
    '__proto__ in ext',
    /"axes"/,
    '"ext": {"__proto__": {"polluted": 1}, "a": {"__proto__": [1]}}, "axes"',
  ),
  changed('an id like a number', set(['axes', 1, 'buds', 0, 'id'], '42')),
];

/** Class 3 and beyond: seeded damage that may or may not be fatal. */
export function flipBits(seed: number): Uint8Array {
  const copy = bytes.slice();
  const flips = 1 + Math.floor(4 * random01(seed, 1));
  for (let i = 0; i < flips; i++) {
    const at = Math.floor(copy.length * random01(seed, 2, i));
    copy[at] = (copy[at] as number) ^ (1 << Math.floor(8 * random01(seed, 3, i)));
  }
  return copy;
}

const oddValues: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1e308,
  -0,
  5e-324,
  1.5,
  '',
  'trunk',
  '__proto__',
  '\u202e',
  '2026-02-30',
  [],
  {},
  [[]],
  { id: 'x' },
  [0, 0, 0],
  ['a'.repeat(300)],
];

/** One or more values of a sample replaced, removed, doubled or exchanged, anywhere in it. */
export function mutate(sample: string, seed: number): string {
  const file = JSON.parse(sample) as unknown;
  const holders: [Record<string, unknown>, string][] = [];
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const key of Object.keys(value)) {
      holders.push([value as Record<string, unknown>, key]);
      walk((value as Record<string, unknown>)[key]);
    }
  };
  walk(file);
  const pick = <T>(list: readonly T[], ...words: number[]): T =>
    list[Math.floor(list.length * random01(seed, ...words))] as T;
  for (let i = 0; i <= Math.floor(3 * random01(seed, 9)); i++) {
    const [holder, key] = pick(holders, 10, i);
    const deed = random01(seed, 11, i);
    if (deed < 0.5) holder[key] = pick(oddValues, 12, i);
    else if (deed < 0.65) delete holder[key];
    else if (deed < 0.8 && typeof holder[key] === 'number')
      holder[key] = holder[key] * (4 * random01(seed, 13, i) - 2);
    else {
      const [other, otherKey] = pick(holders, 14, i);
      holder[key] = JSON.parse(JSON.stringify(other[otherKey] ?? null)) as unknown;
    }
  }
  return JSON.stringify(file);
}
