/** Days of work as a calendar file, by RFC 5545 (Desruisseaux 2009). */
import { addDays } from '../season/calendar.ts';
import type { IsoDate, Period } from '../season/site.ts';

export interface CalendarEvent {
  /** Stable: the same work has the same one the next time it is written. */
  readonly uid: string;
  readonly when: Period;
  readonly title: string;
  readonly text: string;
}

/** Backslash, semicolon and comma are escaped, any line end becomes \n, other control characters go (3.3.11). */
const escaped = (text: string): string =>
  text
    .replace(/[\\;,]/g, (mark) => `\\${mark}`)
    .replace(/\r\n|\r|\n/g, '\\n')
    .replace(/\p{Cc}/gu, '');

const mostOctets = 75;
/** Of a character in UTF-8. */
function octets(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}

/** Lines of 75 octets at most, those after the first begin with a space; no character is split (3.1). */
function folded(line: string): string {
  let [lines, size] = ['', 0];
  for (const character of line) {
    const more = octets(character);
    if (size + more > mostOctets) {
      lines += '\r\n ';
      size = 1;
    }
    lines += character;
    size += more;
  }
  return lines;
}

const dateText = (date: IsoDate): string => date.replaceAll('-', '');

/** @param stamp when it was written, UTC: "2026-04-19T07:31:00.000Z" */
function eventLines({ uid, when, title, text }: CalendarEvent, stamp: string): string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(uid)}`,
    `DTSTAMP:${stamp.replace(/[-:]|\.\d+/g, '')}`,
    `DTSTART;VALUE=DATE:${dateText(when.from)}`,
    // The day after the last (3.6.1).
    `DTEND;VALUE=DATE:${dateText(addDays(when.to, 1))}`,
    `SUMMARY:${escaped(title)}`,
    `DESCRIPTION:${escaped(text)}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

export function calendarText(events: readonly CalendarEvent[], stamp: string): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Boughlight//Work//EN',
    ...events.flatMap((event) => eventLines(event, stamp)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}
