/** From bytes to a parsed value: size, character code, depth, JSON. Nothing here knows what a tree is. */
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

const lineAt = (text: string, position: number): string =>
  `line ${text.slice(0, position).split('\n').length}`;

interface Nesting {
  /** Position of the first bracket that lies too deep, or -1. */
  tooDeepAt: number;
  /** Whether the text stops inside a string or inside open brackets. */
  unfinished: boolean;
}

/** Counts brackets outside strings, once through the text. */
function scanNesting(text: string): Nesting {
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
      if (depth > depthLimit) return { tooDeepAt: i, unfinished: false };
    } else if (code === 0x7d || code === 0x5d) depth--;
  }
  return { tooDeepAt: -1, unfinished: inString || depth > 0 };
}

function parseJson(text: string): { value: unknown } | Refusal {
  const nesting = scanNesting(text);
  if (nesting.tooDeepAt >= 0) {
    const where = lineAt(text, nesting.tooDeepAt);
    return refuse(
      where,
      `Lists lie within lists more than ${depthLimit} deep. No tree file is like that; it was damaged or made by something else.`,
    );
  }
  try {
    return { value: JSON.parse(text) as unknown };
  } catch (error) {
    if (nesting.unfinished) {
      return refuse(
        lineAt(text, text.length),
        'The file stops in the middle. Perhaps it was only partly saved or sent; fetch it again, or open an older copy.',
      );
    }
    const position = /position (\d+)/.exec(String(error))?.[1];
    const where = position === undefined ? wholeFile : lineAt(text, Number(position));
    return refuse(
      where,
      'The text is not valid JSON: a comma, quote or bracket is wrong there. If it was edited by hand, mend that line; else open an older copy.',
    );
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
