/** What came of reading something a person wrote: its value, or what is wrong with it and what to write instead. */
export type Read<Value> = { readonly ok: true; readonly value: Value } | Misread;

interface Misread {
  readonly ok: false;
  readonly reason: string;
}

export const misuse = (reason: string): Misread => ({ ok: false, reason });
