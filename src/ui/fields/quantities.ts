/** How each kind of number is shown in a field and read back. Inside, lengths are metres and angles degrees. */
import {
  formatDecimal,
  type LengthUnit,
  metresPer,
  parseDecimal,
  parseLength,
  type Units,
} from '../../geometry/measure.ts';

export interface Quantity {
  /** Text of the field, without its unit. */
  write(value: number, units: Units): string;
  /** Null when the text cannot be read. */
  read(text: string, units: Units): number | null;
  /** Short unit beside the field; empty for a bare number. */
  unit(units: Units): string;
  /** The unit in full, for those who hear it. */
  unitInFull(units: Units): string;
}

/** Decimals without idle zeros at the end. */
const trimmed = (value: number, decimals: number): string =>
  formatDecimal(value, decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');

const inFull: Readonly<Record<LengthUnit, string>> = {
  mm: 'millimetres',
  cm: 'centimetres',
  m: 'metres',
  in: 'inches',
  ft: 'feet',
};

const inUnit = (metric: LengthUnit, metricDecimals: number, us: LengthUnit, usDecimals: number): Quantity => {
  const unitOf = (units: Units) => (units === 'us' ? us : metric);
  return {
    write: (value, units) =>
      trimmed(value / metresPer[unitOf(units)], units === 'us' ? usDecimals : metricDecimals),
    read: (text, units) => parseLength(ungrouped(text), unitOf(units)),
    unit: unitOf,
    unitInFull: (units) => inFull[unitOf(units)],
  };
};

const plain = (decimals: number, unit: string, unitInFull: string): Quantity => ({
  write: (value) => trimmed(value, decimals),
  read: (text) => parseDecimal(ungrouped(text).replace(/\s*(°|%|degrees|deg)$/i, '')),
  unit: () => unit,
  unitInFull: () => unitInFull,
});

/** "1 500" and Arabic or Persian digits as plain ones. */
function ungrouped(text: string): string {
  return text
    .replace(/[٠-٩]/g, (d) => String(d.charCodeAt(0) - 0x0660))
    .replace(/[۰-۹]/g, (d) => String(d.charCodeAt(0) - 0x06f0))
    .replace(/٫/g, '.')
    .replace(/(\d)[\s\u00a0\u202f](?=\d{3}(\D|$))/g, '$1');
}

const percent: Quantity = {
  ...plain(0, '%', 'percent'),
  write: (value) => trimmed(value * 100, 1),
  read: (text, units) => {
    const value = plain(1, '%', 'percent').read(text, units);
    return value === null ? null : value / 100;
  },
};

/** Degrees Celsius inside; Fahrenheit where US units are shown, or where the entry says so. */
const temperature: Quantity = {
  write: (valueC, units) => trimmed(units === 'us' ? fahrenheit(valueC) : valueC, 1),
  read: (text, units) => {
    const [, number = '', letter] = /^(.*?)\s*°?\s*([cf])?$/i.exec(text.trim()) ?? [];
    const value = parseDecimal(ungrouped(number));
    if (value === null) return null;
    const isF = letter === undefined ? units === 'us' : letter.toLowerCase() === 'f';
    return isF ? Math.round(((value - 32) * 500) / 9) / 100 : value;
  },
  unit: (units) => (units === 'us' ? '°F' : '°C'),
  unitInFull: (units) => (units === 'us' ? 'degrees Fahrenheit' : 'degrees Celsius'),
};

/** Degrees Celsius as Fahrenheit. */
export const fahrenheit = (valueC: number): number => (valueC * 9) / 5 + 32;

export const quantities = {
  /** Branches, distances along them, pots. */
  wood: inUnit('cm', 1, 'in', 2),
  thickness: inUnit('mm', 1, 'in', 2),
  /** Walls, neighbours, heights of places. */
  site: inUnit('m', 2, 'ft', 2),
  bearing: plain(0, '°', 'degrees clockwise from north'),
  /** The same to a tenth, where they are measured. */
  exactBearing: plain(1, '°', 'degrees clockwise from north'),
  exactAngle: plain(1, '°', 'degrees from upright'),
  turn: plain(1, '°', 'degrees round the wood, clockwise seen from its tip'),
  angle: plain(0, '°', 'degrees from upright'),
  slope: plain(1, '°', 'degrees above the level'),
  coordinate: plain(2, '°', 'degrees'),
  count: plain(0, '', ''),
  percent,
  temperature,
  hours: plain(1, 'h', 'hours a day'),
  share: plain(2, '', 'share of 1'),
  leafDensity: plain(2, 'm²/m³', 'square metres of leaf in a cubic metre'),
} as const satisfies Record<string, Quantity>;
