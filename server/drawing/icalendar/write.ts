import { isoOf, LAST_DAY } from '../../measure/sittings/days.js';

/** Something that lasts a whole day. */
export interface CalendarEvent {
  /** What stays the same when the event is moved or said otherwise; no two events of a calendar have the same. */
  readonly identity: readonly string[];
  /** Counted from 1970-01-01. */
  readonly day: number;
  readonly summary: string;
  /** In lines; empty for none. */
  readonly description: string;
  /** Whether it takes the day, or leaves it free for others. */
  readonly isBusy: boolean;
}

export interface CalendarOptions {
  readonly name: string;
  /** When it is written; calendars take the later of two writings of one event. */
  readonly now: Date;
}

/** Octets of a line, its end left out (RFC 5545, section 3.1). */
const LONGEST_LINE = 75;

/**
 * A calendar as iCalendar (RFC 5545), lines ended in CR LF. Events are days, not hours (`VALUE=DATE`, the end the day
 * after), so that no time zone moves them.
 */
export function iCalendar(events: readonly CalendarEvent[], { name, now }: CalendarOptions): string {
  const written = timeOf(now);
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Mahlstick//Mahlstick//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    // RFC 7986, and the name for it that calendars knew before.
    `NAME:${escaped(name)}`,
    `X-WR-CALNAME:${escaped(name)}`,
    ...events.flatMap((event) => eventLines(event, written)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function eventLines(
  { identity, day, summary, description, isBusy }: CalendarEvent,
  written: string,
): readonly string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${uidOf(identity)}`,
    `DTSTAMP:${written}`,
    `DTSTART;VALUE=DATE:${dateOf(day)}`,
    // The end is not part of it; on the last day that can be written it is left out, which means one day too.
    ...(day < LAST_DAY ? [`DTEND;VALUE=DATE:${dateOf(day + 1)}`] : []),
    `SUMMARY:${escaped(summary)}`,
    ...(description === '' ? [] : [`DESCRIPTION:${escaped(description)}`]),
    `TRANSP:${isBusy ? 'OPAQUE' : 'TRANSPARENT'}`,
    'END:VEVENT',
  ];
}

function dateOf(day: number): string {
  return isoOf(day).replaceAll('-', '');
}

/** `20270122T083000Z` */
function timeOf(now: Date): string {
  return `${now.toISOString().slice(0, 19).replaceAll(/[-:]/gu, '')}Z`;
}

/** A TEXT value (section 3.3.11); controls, which it can't hold, are left out, and half characters replaced. */
function escaped(text: string): string {
  return text
    .replaceAll(/\r\n?|[\u2028\u2029]/gu, '\n')
    .replaceAll(/[^\P{Cc}\n\t]/gu, '')
    .replaceAll(/\p{Cs}/gu, '\ufffd')
    .replaceAll(/[\\;,]/gu, (mark) => `\\${mark}`)
    .replaceAll('\n', '\\n');
}

/** Broken where a line has room for no further character; what goes on begins with a blank. */
function folded(line: string): string {
  let [text, octets] = ['', 0];
  for (const character of line) {
    const own = octetsOf(character);
    if (octets + own > LONGEST_LINE) {
      text += '\r\n ';
      octets = 1;
    }
    text += character;
    octets += own;
  }
  return text;
}

/** Of one character in UTF-8. */
function octetsOf(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}

/** The same for the same identity everywhere: 64 bits of FNV-1a over its words in UTF-8. */
function uidOf(identity: readonly string[]): string {
  let hash = 0xcbf29ce484222325n;
  for (const octet of new TextEncoder().encode(JSON.stringify(identity))) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(octet)) * 0x100000001b3n);
  }
  return `${hash.toString(16).padStart(16, '0')}@mahlstick`;
}
