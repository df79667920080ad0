/**
 * Reading an hourly weather file in the EPW format (EnergyPlus, Auxiliary Programs: Weather File Data Dictionary, version
 * 24.1). One pass over the text. Read are date, dry bulb temperature and the three irradiances; all else is skipped.
 */
import { type EpwHours, type EpwPlace, type EpwRefusal, epwSlots, monthSpan } from './epwHours.ts';

const refuse = (line: number, reason: string): EpwRefusal => ({ ok: false, reason, where: `line ${line}` });

/** Columns of a row that are read, from 0. */
const column = { temperature: 6, global: 13, directNormal: 14, diffuse: 15 } as const;
const leastColumns = 16;
/** As many lines as a header may have, whatever it says. */
const mostHeaderLines = 40;

/** Fields of a line; commas within double quotes do not part. */
function fieldsOf(line: string): string[] {
  if (!line.includes('"')) return line.split(',');
  const fields: string[] = [];
  let field = '';
  let quoted = false;
  for (const c of line) {
    if (c === '"') quoted = !quoted;
    else if (c === ',' && !quoted) {
      fields.push(field);
      field = '';
    } else field += c;
  }
  return [...fields, field];
}

/** NaN for what is no plain decimal number, and for nothing. */
function numberOf(text: string | undefined): number {
  const trimmed = (text ?? '').trim();
  return /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?$/.test(trimmed) ? Number(trimmed) : Number.NaN;
}

function readPlace(fields: readonly string[]): EpwPlace | EpwRefusal {
  if ((fields[0] ?? '').trim().toUpperCase() !== 'LOCATION')
    return refuse(1, 'This is no EPW weather file: its first line should begin with LOCATION.');
  const [latitudeDeg, longitudeDeg, zoneH, elevationM] = [6, 7, 8, 9].map((i) => numberOf(fields[i])) as [
    number,
    number,
    number,
    number,
  ];
  if (!(Math.abs(latitudeDeg) <= 90)) return refuse(1, 'The latitude of the place (7th field) is none.');
  if (!(Math.abs(longitudeDeg) <= 180)) return refuse(1, 'The longitude of the place (8th field) is none.');
  if (!(zoneH >= -12 && zoneH <= 14))
    return refuse(1, 'The time zone of the place (9th field) should be hours from -12 to 14.');
  if (!(elevationM > -500 && elevationM < 9000))
    return refuse(1, 'The height of the place above the sea (10th field) is none.');
  const words = [1, 2, 3]
    .map((i) => (fields[i] ?? '').trim())
    .filter((word) => /\p{L}/u.test(word) && word.toLowerCase() !== 'unknown');
  const name = words.join(', ').slice(0, 120);
  return {
    name,
    madeBy: (fields[4] ?? '').trim().slice(0, 40),
    latitudeDeg,
    longitudeDeg,
    zoneH,
    elevationM,
  };
}

interface Lines {
  /** The next line without its end; null after the last. */
  next(): string | null;
  /** Of the line given last, from 1. */
  readonly number: number;
}

function linesOf(text: string): Lines {
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let number = 0;
  return {
    next() {
      if (at >= text.length) return null;
      const end = text.indexOf('\n', at);
      const line = text.slice(at, end < 0 ? text.length : end);
      at = end < 0 ? text.length : end + 1;
      number++;
      return line.endsWith('\r') ? line.slice(0, -1) : line;
    },
    get number() {
      return number;
    },
  };
}

/** Reads past the line DATA PERIODS; null when all is well. */
function readPeriods(lines: Lines): EpwRefusal | null {
  for (let line = lines.next(); line !== null && lines.number <= mostHeaderLines; line = lines.next()) {
    if (!line.trimStart().toUpperCase().startsWith('DATA PERIODS')) continue;
    const perHour = numberOf(fieldsOf(line)[2]);
    if (perHour === 1) return null;
    return refuse(
      lines.number,
      Number.isNaN(perHour)
        ? 'DATA PERIODS should say how many records there are an hour (3rd field).'
        : `There are ${perHour} records an hour. Use a file with one record an hour.`,
    );
  }
  return refuse(lines.number, 'The line DATA PERIODS, after which the hours begin, is missing.');
}

/** Limits of a figure; what is at or above `missing`, left blank, or a code of nines below 0, is missing. */
interface Limits {
  readonly name: string;
  readonly missing: number;
  readonly low: number;
  readonly high: number;
}
/** As files made from other formats have it: -99, -99.9, -999, -9999. */
const isCodeBelow0 = (word: string): boolean => /^-99+(\.[09]*)?$/.test(word);
const temperatureLimits: Limits = { name: 'temperature', missing: 99.9, low: -70, high: 70 };
/** Sensors read a little below 0 at night, and clouds can throw light on a sensor that is in the sun. */
const radiation = (name: string): Limits => ({ name, missing: 9999, low: -20, high: 1500 });
const globalLimits = radiation('global radiation');
const directLimits = radiation('direct radiation');
const diffuseLimits = radiation('diffuse radiation');

/** NaN when missing; the reason when it cannot be. */
function figureOf(text: string | undefined, { name, missing, low, high }: Limits): number | string {
  const word = (text ?? '').trim();
  if (word === '' || isCodeBelow0(word)) return Number.NaN;
  const value = numberOf(word);
  if (Number.isNaN(value)) return `The ${name} (${word.slice(0, 20)}) is no number.`;
  if (value >= missing) return Number.NaN;
  if (value < low || value > high) return `The ${name} (${value}) cannot be: it lies from ${low} to ${high}.`;
  return value;
}

/** Slot of a row's date, or what is wrong with it. */
function slotOf(fields: readonly string[]): number | string {
  const [month, day, hour] = [1, 2, 3].map((i) => numberOf(fields[i])) as [number, number, number];
  if (!(Number.isInteger(month) && month >= 1 && month <= 12))
    return `The month (2nd field: ${fields[1]}) should be 1 to 12.`;
  const { first, days } = monthSpan(month - 1);
  if (!(Number.isInteger(day) && day >= 1 && day <= days))
    return `There is no day ${fields[2]} in month ${month} (3rd field).`;
  if (!(Number.isInteger(hour) && hour >= 1 && hour <= 24))
    return `The hour (4th field: ${fields[3]}) should be 1 to 24: it is the one that ends at that time.`;
  return 24 * (first + day - 1) + hour - 1;
}

type Filling = { -readonly [Key in Exclude<keyof EpwHours, 'place'>]: EpwHours[Key] };

/** Puts a row into its slot; the reason when it cannot be used. */
function readRow(line: string, into: Filling): string | null {
  const fields = line.split(',');
  if (fields.length < leastColumns)
    return `The row has ${fields.length} fields, and ${leastColumns} at least are needed, with commas between them.`;
  const year = numberOf(fields[0]);
  if (!(Number.isInteger(year) && year >= 1800 && year <= 2200)) return `There is no year ${fields[0]}.`;
  const slot = slotOf(fields);
  if (typeof slot === 'string') return slot;
  if (into.year[slot] !== 0)
    return `Hour ${fields[3]} of day ${fields[2]} of month ${fields[1]} comes twice. A file of one year is needed.`;
  into.year[slot] = year;
  const read = [
    [into.temperatureC, figureOf(fields[column.temperature], temperatureLimits)],
    [into.globalWhM2, figureOf(fields[column.global], globalLimits)],
    [into.directNormalWhM2, figureOf(fields[column.directNormal], directLimits)],
    [into.diffuseWhM2, figureOf(fields[column.diffuse], diffuseLimits)],
  ] as const;
  for (const [values, figure] of read) {
    if (typeof figure === 'string') return figure;
    values[slot] = values === into.temperatureC ? figure : Math.max(0, figure);
  }
  return null;
}

const nothing = (): Float64Array => new Float64Array(epwSlots).fill(Number.NaN);

/** All hours of a file; what is missing in it is NaN. Rows may come in any order, years may be mixed month by month. */
export function readEpw(text: string): { readonly ok: true; readonly hours: EpwHours } | EpwRefusal {
  const lines = linesOf(text);
  const place = readPlace(fieldsOf(lines.next() ?? ''));
  if ('ok' in place) return place;
  const wrong = readPeriods(lines);
  if (wrong !== null) return wrong;
  const hours = {
    place,
    year: new Int32Array(epwSlots),
    temperatureC: nothing(),
    globalWhM2: nothing(),
    directNormalWhM2: nothing(),
    diffuseWhM2: nothing(),
  };
  for (let line = lines.next(); line !== null; line = lines.next()) {
    if (line.trim() === '') continue;
    const reason = readRow(line, hours);
    if (reason !== null) return refuse(lines.number, reason);
  }
  return { ok: true, hours };
}
