/** Names and notes from files: what a reader cannot see, or what turns the text round, is taken out. */

// Directions of writing (Unicode Standard Annex 9) and the mark that says how bytes are ordered.
const turning = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/gu;
// Control characters, halves of characters that lost their other half, line and paragraph separators.
const unseen = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/gu;
const unseenButLines = /(?![\n\t])[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** A name on one line. May come out empty. */
export const plainName = (text: string): string => text.replace(turning, '').replace(unseen, ' ').trim();

/** A note, which may have several lines. */
export const plainNote = (text: string): string =>
  text.replace(turning, '').replace(/\r\n?/g, '\n').replace(unseenButLines, '');
