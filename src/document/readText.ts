/** From bytes to a parsed value: size, character code, depth, JSON. Nothing here knows what a tree is. */
import { findJsonFault } from './jsonFault.ts';
import { type Refusal, refuse } from './refusal.ts';

export const sizeLimitBytes = 5_000_000;
/** Deeper nesting is refused before it is parsed: later steps walk the value and must not run out of stack. */
export const depthLimit = 32;

interface Decoder {
  decode(bytes: Uint8Array): string;
}
// Every runtime has it, but the language's own types do not say so.
const { TextDecoder } = globalThis as unknown as {
  TextDecoder: new (label: string, options: { fatal: boolean }) => Decoder;
};

const wholeFile = 'the whole file';

function decode(bytes: Uint8Array): string | Refusal {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return refuse(
      wholeFile,
      'The file is not text in UTF-8. It may be a picture, an archive, or text saved in another code. Open the tree file itself, or save it again as UTF-8.',
    );
  }
}

/** Lines and characters count from 1. */
function placeAt(text: string, position: number): string {
  const lines = text.slice(0, position).split('\n');
  return `line ${lines.length}, character ${(lines[lines.length - 1] ?? '').length + 1}`;
}

/** Position of the first bracket that lies too deep, or -1; counts brackets outside strings, once through the text. */
function findTooDeep(text: string): number {
  let depth = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (inString) {
      if (code === 0x5c) i++;
      else if (code === 0x22) inString = false;
    } else if (code === 0x22) inString = true;
    else if (code === 0x7b || code === 0x5b) {
      depth++;
      if (depth > depthLimit) return i;
    } else if (code === 0x7d || code === 0x5d) depth--;
  }
  return -1;
}

function badJson(text: string): Refusal {
  const fault = findJsonFault(text);
  // The runtime is the judge of what is JSON; should the two ever differ, at least the words are true.
  if (fault === null) return refuse(wholeFile, 'The text is not valid JSON. Open an older copy.');
  if (fault.unfinished) {
    return refuse(
      placeAt(text, text.length),
      'The file stops in the middle. Perhaps it was only partly saved or sent; fetch it again, or open an older copy.',
    );
  }
  return refuse(
    placeAt(text, fault.at),
    'The text is not valid JSON: a comma, quote, bracket or bare word is wrong there or just before. If it was edited by hand, mend that line; else open an older copy.',
  );
}

function parseJson(text: string): { value: unknown } | Refusal {
  const tooDeepAt = findTooDeep(text);
  if (tooDeepAt >= 0) {
    return refuse(
      placeAt(text, tooDeepAt),
      `Lists lie within lists more than ${depthLimit} deep. No tree file is like that; it was damaged or made by something else.`,
    );
  }
  try {
    return { value: JSON.parse(text) as unknown };
  } catch {
    return badJson(text);
  }
}

/** The parsed value of a file, given as text or as bytes. */
export function readJson(input: string | Uint8Array): { readonly value: unknown } | Refusal {
  if (input.length > sizeLimitBytes) {
    const sizeMB = (input.length / 1e6).toFixed(1);
    return refuse(
      wholeFile,
      `The file has ${sizeMB} MB; a tree file has at most ${sizeLimitBytes / 1e6} MB. Check that it is the right file.`,
    );
  }
  const text = typeof input === 'string' ? input.replace(/^\ufeff/, '') : decode(input);
  if (typeof text !== 'string') return text;
  if (text.trim() === '') return refuse(wholeFile, 'The file is empty. Open an older copy.');
  return parseJson(text);
}
