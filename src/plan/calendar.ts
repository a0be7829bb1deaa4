/**
 * Sessions and the event as a calendar file (RFC 5545). Times are in UTC, so that the file needs no table of
 * time zones; a calendar shows them in its own local time.
 */
import type { PracticeSession } from './types.ts';

export interface CalendarInput {
  readonly eventName: string;
  readonly eventMs: number;
  readonly sessions: readonly PracticeSession[];
  /** When the file is made; epoch milliseconds. */
  readonly stampMs: number;
  /** Unique to the event, and the same each time its file is made: then a calendar replaces, not doubles. */
  readonly eventId: string;
  /** What a session is called: "Practice". */
  readonly sessionTitle: string;
}

/** 3.1: lines of at most 75 octets, without the line break. */
const MOST_OCTETS = 75;
const LINE_BREAK = '\r\n';

export function calendarText(input: CalendarInput): string {
  const { eventName, eventMs, sessions, stampMs, eventId, sessionTitle } = input;
  const stamp = `DTSTAMP:${utcTime(stampMs)}`;
  const uid = (part: string): string => `UID:${textValue(`${eventId}-${part}@gatecall`)}`;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Gatecall//Plan//EN',
    'CALSCALE:GREGORIAN',
    ...sessions.flatMap(({ atMs, minutes }) => [
      'BEGIN:VEVENT',
      uid(utcTime(atMs)),
      stamp,
      `DTSTART:${utcTime(atMs)}`,
      `DURATION:${duration(minutes)}`,
      `SUMMARY:${textValue(`${sessionTitle}: ${eventName}`)}`,
      'END:VEVENT',
    ]),
    'BEGIN:VEVENT',
    uid('event'),
    stamp,
    `DTSTART:${utcTime(eventMs)}`,
    `SUMMARY:${textValue(eventName)}`,
    'END:VEVENT',
    'END:VCALENDAR',
  ];
  return lines.map((line) => folded(line) + LINE_BREAK).join('');
}

/** 3.3.5, form 2: `20260901T190000Z`. */
function utcTime(ms: number): string {
  return `${new Date(ms).toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
}

/** 3.3.6, in whole minutes, at least one. */
function duration(minutes: number): string {
  return `PT${Math.max(1, Math.round(minutes))}M`;
}

/** 3.3.11: backslash, semicolon, comma and line break escaped; other control characters may not stand in a text. */
function textValue(text: string): string {
  return text
    .replaceAll(/[\\;,]/g, (mark) => `\\${mark}`)
    .replaceAll(/\r\n|\r|\n/g, '\\n')
    .replaceAll(CONTROL_CHARACTERS, '');
}

const CONTROL_CHARACTERS = /(?!\t)\p{Cc}/gu;

/** 3.1: a long line goes on after a break and a space; no character is cut in two. */
function folded(line: string): string {
  let result = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character.codePointAt(0)!);
    if (octets + size > MOST_OCTETS) {
      result += `${LINE_BREAK} `;
      octets = 1;
    }
    result += character;
    octets += size;
  }
  return result;
}

/** In UTF-8. */
function octetsOf(codePoint: number): number {
  if (codePoint < 0x80) return 1;
  if (codePoint < 0x800) return 2;
  return codePoint < 0x10000 ? 3 : 4;
}
