/** Writing the tree file: always the same bytes for the same tree, so that two versions can be compared line by line. */
import type { TreeFile } from './treeFile.ts';

const lineWidth = 110;

/** Lengths to 0.1 mm, angles to 0.01 degrees: finer than a tape measure and a bearing can be read. */
const tenthMm = (m: number): number => Math.round(m * 1e4) / 1e4 + 0;
const hundredthDeg = (deg: number): number => Math.round(deg * 100) / 100 + 0;

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** Names that end in M or Deg say the unit; these are lengths without a unit in their name. */
const lengthsByName = new Set(['path', 'at', 'from', 'to', 'centre']);

function rounded(key: string, value: Json): Json {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`writeTreeFile: ${key} must be finite, got ${value}`);
    if (key.endsWith('Deg')) return hundredthDeg(value);
    return key.endsWith('M') || lengthsByName.has(key) ? tenthMm(value) : value + 0;
  }
  if (Array.isArray(value)) return value.map((item) => rounded(key, item));
  return value;
}

/** Keys of every object of the file in the order they are written; the same order as in the schema. */
const keyOrder: Readonly<Record<string, readonly string[]>> = {
  file: [
    '$schema',
    'format',
    'version',
    'id',
    'name',
    'note',
    'species',
    'cultivar',
    'site',
    'standing',
    'season',
    'settings',
    'axes',
    'ext',
  ],
  cultivar: ['name', 'ripening', 'bearsFirstCrop'],
  site: [
    'name',
    'latitudeDeg',
    'longitudeDeg',
    'timeZone',
    'elevationM',
    'groundReflectance',
    'viewpoint',
    'climate',
    'frost',
    'surroundings',
    'wallsThrowLight',
    'skyline',
    'slope',
    'cover',
  ],
  viewpoint: ['name', 'bearingDeg'],
  climate: ['source', 'meanC', 'minC', 'sunshineH', 'clearness', 'hourly'],
  hourly: ['source', 'globalWM2', 'diffuseWM2'],
  frost: ['lastOfSpring', 'firstOfAutumn'],
  surroundings: [
    'kind',
    'name',
    'from',
    'to',
    'centre',
    'centreHeightM',
    'sizeM',
    'halfSizeM',
    'heightM',
    'thicknessM',
    'turnedDeg',
    'reflectance',
    'ridgeHeightM',
    'openFraction',
    'leafAreaDensityM2M3',
  ],
  skyline: ['reflectance', 'points'],
  points: ['bearingDeg', 'heightDeg'],
  slope: ['slopeDeg', 'fallsToDeg'],
  cover: ['name', 'passedFraction', 'diffusingFraction', 'dates'],
  dates: ['from', 'until'],
  standing: ['pot', 'at', 'turnedDeg', 'quarterTurnEveryWeeks'],
  pot: ['topDiameterM', 'baseDiameterM', 'heightM', 'soilBelowRimM'],
  season: ['budBreakOn', 'sketchedOn'],
  axes: [
    'id',
    'name',
    'kind',
    'parentId',
    'atM',
    'path',
    'baseDiameterM',
    'tipDiameterM',
    'grownIn',
    'condition',
    'bearsFigs',
    'pin',
    'foliage',
    'buds',
  ],
  foliage: ['count', 'midribM', 'source', 'midribSource'],
  buds: ['id', 'atM', 'aroundDeg', 'pin'],
};

/** Settings keep the grower's own figures to the last digit. */
const sorted = (settings: { readonly [name: string]: Json }): Json =>
  Object.fromEntries(Object.entries(settings).sort(([a], [b]) => (a < b ? -1 : 1)));

/** The same value with keys in order and numbers rounded. `ext` is passed on untouched. */
function canonical(place: string, value: Json): Json {
  if (place === 'ext') return value;
  if (place === 'settings') return sorted(value as { readonly [name: string]: Json });
  if (Array.isArray(value) && place in keyOrder) return value.map((item) => canonical(place, item));
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return rounded(place, value);
  const object = value as { readonly [key: string]: Json };
  const known = keyOrder[place];
  const keys = known ? known.filter((key) => Object.hasOwn(object, key)) : Object.keys(object).sort();
  return Object.fromEntries(
    keys.filter((key) => object[key] !== undefined).map((key) => [key, canonical(key, object[key] as Json)]),
  );
}

const onOneLine = (value: Json): string => {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const entries = Object.entries(value).map(([key, v]) => `${JSON.stringify(key)}: ${onOneLine(v)}`);
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`;
};

/** Numbers, as many on a line as fit. */
function filled(numbers: readonly number[], inner: string): string {
  const lines: string[] = [];
  let line = inner;
  numbers.forEach((number, i) => {
    const word = `${number}${i < numbers.length - 1 ? ',' : ''}`;
    if (line !== inner && line.length + 1 + word.length > lineWidth) {
      lines.push(line);
      line = inner;
    }
    line += line === inner ? word : ` ${word}`;
  });
  return `[\n${[...lines, line].join('\n')}\n${inner.slice(2)}]`;
}

/** What fits on a line stays on one; everything else is broken at its own level. */
function laidOut(value: Json, indent: string, before: number): string {
  const line = onOneLine(value);
  if (typeof value !== 'object' || value === null || indent.length + before + line.length <= lineWidth)
    return line;
  const inner = `${indent}  `;
  if (Array.isArray(value) && value.every((item) => typeof item === 'number')) return filled(value, inner);
  if (Array.isArray(value)) {
    return `[\n${value.map((item) => inner + laidOut(item, inner, 0)).join(',\n')}\n${indent}]`;
  }
  const entries = Object.entries(value).map(([key, v]) => {
    const label = `${JSON.stringify(key)}: `;
    return inner + label + laidOut(v, inner, label.length);
  });
  return `{\n${entries.join(',\n')}\n${indent}}`;
}

/**
 * The text of a tree file: keys in a fixed order, lengths to 0.1 mm, angles (also latitude and longitude,
 * about 1 km, which is ample for the sun) to 0.01 degrees, one line for what fits on one. Writing a file that
 * was read from such a text gives the same bytes. `ext` keeps its keys, order and numbers.
 */
export function writeTreeFile(file: TreeFile): string {
  return `${laidOut(canonical('file', file as unknown as Json), '', 0)}\n`;
}
