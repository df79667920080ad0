/** A file that is not taken: what is wrong, where, and what to do, in words that fit on a phone. */
export interface Refusal {
  readonly ok: false;
  /** What is wrong, why it matters and what to do. At most 400 characters. */
  readonly reason: string;
  /** Place in the file, such as `axes[3].atM (East limb)`. At most 200 characters. */
  readonly where: string;
}

/** Cut to `most` UTF-16 units, never through the middle of a character. */
const cut = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, most - 1).replace(/\p{Cs}$/u, '')}…`;

export const refuse = (where: string, reason: string): Refusal => ({
  ok: false,
  reason: cut(reason, 400),
  where: cut(where, 200),
});

/** A value from the file as it may be quoted in a sentence: short, on one line, nothing that could upset a screen. */
export function quoted(value: unknown): string {
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) return String(value);
  if (typeof value === 'string') return `"${cut(value.replace(/[\p{C}\p{Zl}\p{Zp}"]/gu, ' '), 40)}"`;
  if (value === undefined) return 'nothing';
  return Array.isArray(value) ? 'a list' : 'an object';
}
