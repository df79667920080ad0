/**
 * Where a text stops being JSON (RFC 8259). The runtime's own messages give a place for some faults, on some
 * runtimes only; a grower who mends a file by hand needs the line for all of them.
 */
export interface JsonFault {
  /** Of the first character that cannot stand there; the length of the text when it only stops too early. */
  readonly at: number;
  /** Whether everything up to the end is good and something is missing after it. */
  readonly unfinished: boolean;
}

type Wanted = 'value' | 'value or ]' | 'name' | 'name or }' | ':' | ', or }' | ', or ]' | 'end';

/**
 * Within strings: from the blank upwards but for quote and backslash. Each character can match in one way only, so
 * that no text makes the search long.
 */
const token =
  /[ \t\n\r]*(?:([{}[\]:,])|("[ !#-[\]-\uffff]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[ !#-[\]-\uffff]*)*")|(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-]))/y;
const blanks = /[ \t\n\r]*/y;
/** A string, number or word that the end of the text cuts off. */
const cutOff = /(?:"[ !#-[\]-\uffff]*(?:\\[ -\uffff][ !#-[\]-\uffff]*)*\\?|-|-?\d[\d.eE+-]*|[a-z]{1,4})$/y;

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** What may follow a whole value. */
function afterValue(open: readonly string[]): Wanted {
  const inner = open[open.length - 1];
  if (inner === undefined) return 'end';
  return inner === '{' ? ', or }' : ', or ]';
}

/** Takes one token; null when it cannot stand there. `kind` is the sign itself, "text" or "word". */
function take(wanted: Wanted, kind: string, open: string[]): Wanted | null {
  const closes = (kind === '}' || kind === ']') && wanted.endsWith(kind);
  if (closes) {
    open.pop();
    return afterValue(open);
  }
  if (wanted === 'value' || wanted === 'value or ]') {
    if (kind === 'text' || kind === 'word') return afterValue(open);
    if (kind !== '{' && kind !== '[') return null;
    open.push(kind);
    return kind === '{' ? 'name or }' : 'value or ]';
  }
  if (wanted === 'name' || wanted === 'name or }') return kind === 'text' ? ':' : null;
  if (wanted === ':') return kind === ':' ? 'value' : null;
  if (wanted === 'end' || kind !== ',') return null;
  return wanted === ', or }' ? 'name' : 'value';
}

/** Null for good JSON. */
export function findJsonFault(text: string): JsonFault | null {
  const open: string[] = [];
  let wanted: Wanted = 'value';
  let at = 0;
  for (;;) {
    const start = at + (matchAt(blanks, text, at)?.[0].length ?? 0);
    if (start === text.length) return wanted === 'end' ? null : { at: start, unfinished: true };
    const found = matchAt(token, text, start);
    if (found === null && matchAt(cutOff, text, start) !== null) return { at: text.length, unfinished: true };
    const kind = found === null ? '' : (found[1] ?? (found[2] === undefined ? 'word' : 'text'));
    const next = take(wanted, kind, open);
    if (found === null || next === null) return { at: start, unfinished: false };
    wanted = next;
    at = start + found[0].length;
  }
}
