/** Lengths, areas and plain numbers as people read and write them, metric and US. Exact: 1 in is 25.4 mm. */
export type Units = 'metric' | 'us';

const mPerInch = 0.0254;
const inchesPerFoot = 12;
const m2PerSquareFoot = (mPerInch * inchesPerFoot) ** 2;

/** `value` with so many decimals and a point, without a minus before zero. */
export function formatDecimal(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new Error(`formatDecimal: a number is needed, got ${value}`);
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** Inches as on a tape: whole and a fraction in lowest terms, such as "13 1/4" or "5/16". */
function inchesOnTape(inches: number, parts: number): string {
  const steps = Math.round(inches * parts);
  const whole = Math.floor(steps / parts);
  let [top, bottom] = [steps % parts, parts];
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = top === 0 ? '' : `${top}/${bottom}`;
  if (whole === 0) return fraction === '' ? '0' : fraction;
  return fraction === '' ? `${whole}` : `${whole} ${fraction}`;
}

function formatUsLength(lengthM: number): string {
  const inches = lengthM / mPerInch;
  if (inches < 2) return `${inchesOnTape(inches, 16)} in`;
  if (inches < 4) return `${inchesOnTape(inches, 8)} in`;
  if (inches < 35.5) return `${inchesOnTape(inches, inches < 12 ? 4 : 2)} in`;
  const whole = Math.round(inches);
  const rest = whole % inchesPerFoot;
  return `${Math.floor(whole / inchesPerFoot)} ft${rest === 0 ? '' : ` ${rest} in`}`;
}

/**
 * A length as a grower reads it off a tape: "8 mm", "3.4 cm", "34 cm", "1.25 m"; "5/16 in", "13 1/2 in", "4 ft 1 in".
 * Rounded to what matters at that size: at most 4.8 % off above 3 cm (at 10.5 cm), half a millimetre below 1 cm.
 */
export function formatLength(lengthM: number, units: Units): string {
  if (!Number.isFinite(lengthM)) throw new Error(`formatLength: a number is needed, got ${lengthM}`);
  if (lengthM < 0) return `-${formatLength(-lengthM, units)}`;
  if (units === 'us') return formatUsLength(lengthM);
  // What was typed as 31.5 cm and came out of a sum as 31.4999999999 is 31.5 cm.
  const cm = Math.round(lengthM * 1e9) / 1e7;
  if (lengthM < 0.00995) return `${Math.round(cm * 10)} mm`;
  if (lengthM < 0.0995) return `${formatDecimal(lengthM * 100, 1).replace('.0', '')} cm`;
  return lengthM < 0.995 ? `${Math.round(cm)} cm` : `${formatDecimal(lengthM, 2)} m`;
}

/** An area as "1.84 m²", "295 cm²"; "19.8 sq ft", "45.7 sq in". */
export function formatArea(areaM2: number, units: Units): string {
  if (units === 'us') {
    if (areaM2 < m2PerSquareFoot) return `${formatDecimal(areaM2 / mPerInch ** 2, 1)} sq in`;
    return `${formatDecimal(areaM2 / m2PerSquareFoot, 1)} sq ft`;
  }
  return areaM2 < 0.1 ? `${Math.round(areaM2 * 1e4)} cm²` : `${formatDecimal(areaM2, 2)} m²`;
}

/** Metres in one of each unit of length. */
export const metresPer = { mm: 0.001, cm: 0.01, m: 1, in: mPerInch, ft: mPerInch * inchesPerFoot } as const;
export type LengthUnit = keyof typeof metresPer;

/** A decimal number with a comma or a point ("1,5", ".5", "-2"); null when the text is something else. */
export function parseDecimal(text: string): number | null {
  const plain = text
    .trim()
    .replace(/\u2212/g, '-')
    .replace(',', '.');
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}

/**
 * A length in metres from what a person types: "34", "34 cm", "1,5 m", "13 in", `4 ft 1 in`, `1'6"`.
 * A bare number is in `bareUnit`. Null when it cannot be read.
 */
export function parseLength(text: string, bareUnit: LengthUnit): number | null {
  const plain = text.trim().toLowerCase().replace(/[′’]/g, "'").replace(/[″”]/g, '"');
  const feet = /^([-+]?[\d.,]+)\s*(?:ft|')\s*(?:([\d.,]+)\s*(?:in|"))?$/.exec(plain);
  if (feet?.[1] !== undefined) {
    const [ft, inches] = [parseDecimal(feet[1]), parseDecimal(feet[2] ?? '0')];
    return ft === null || inches === null
      ? null
      : Math.sign(ft || 1) * (Math.abs(ft) * metresPer.ft + inches * metresPer.in);
  }
  const match = /^(.*?)\s*(mm|cm|m|in|")?$/.exec(plain);
  const value = parseDecimal(match?.[1] ?? '');
  if (value === null) return null;
  const unit = match?.[2] === '"' ? 'in' : match?.[2];
  return value * metresPer[(unit as LengthUnit | undefined) ?? bareUnit];
}
