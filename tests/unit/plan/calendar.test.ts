import fc from 'fast-check';
import { convertIcsCalendar } from 'ts-ics';
import { describe, expect, it } from 'vitest';
import { calendarText, type CalendarInput } from '../../../src/plan/calendar.ts';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { eveningMs, MINUTE_MS } from '../memory/examples.ts';

const input = (change: Partial<CalendarInput> = {}): CalendarInput => ({
  eventName: 'Deck week',
  eventMs: eveningMs + 3 * DAY_MS,
  sessions: [
    { atMs: eveningMs, minutes: 20 },
    { atMs: eveningMs + DAY_MS, minutes: 12.4 },
  ],
  stampMs: eveningMs - DAY_MS,
  eventId: '0198f2aa',
  sessionTitle: 'Practice',
  ...change,
});

const octets = (line: string): number => new TextEncoder().encode(line).length;
/** Names as people type them, with all that has a meaning in the format. */
const anyName = fc.string({
  unit: fc.oneof(
    fc.constantFrom('\\', ';', ',', ':', '"', 'n', ' ', 'é', '滑', '🛬'),
    fc.string({ maxLength: 1 }),
  ),
  minLength: 1,
  maxLength: 120,
});

describe('the calendar file', () => {
  it('is read by an independent reader with the same times, lengths and names', () => {
    const calendar = convertIcsCalendar(undefined, calendarText(input()));
    expect(calendar.version).toBe('2.0');
    expect(
      calendar.events!.map(({ summary, start, duration, stamp }) => ({
        summary,
        atMs: start.date.getTime(),
        minutes: duration?.minutes,
        stampMs: stamp.date.getTime(),
      })),
    ).toEqual([
      { summary: 'Practice: Deck week', atMs: eveningMs, minutes: 20, stampMs: eveningMs - DAY_MS },
      { summary: 'Practice: Deck week', atMs: eveningMs + DAY_MS, minutes: 12, stampMs: eveningMs - DAY_MS },
      { summary: 'Deck week', atMs: eveningMs + 3 * DAY_MS, minutes: undefined, stampMs: eveningMs - DAY_MS },
    ]);
  });

  it('keeps commas, semicolons and backslashes of a name', () => {
    const eventName = 'Day 1; wind, 20 kt \\ gusts';
    const { events } = convertIcsCalendar(undefined, calendarText(input({ eventName })));
    expect(events!.at(-1)!.summary).toBe(eventName);
  });

  it('has lines of at most 75 octets, each ended by CR and LF, none with a control character', () => {
    fc.assert(
      fc.property(anyName, (eventName) => {
        const text = calendarText(input({ eventName }));
        expect(text.endsWith('\r\n')).toBe(true);
        for (const line of text.slice(0, -2).split('\r\n')) {
          expect(octets(line)).toBeLessThanOrEqual(75);
          expect(line).not.toMatch(/(?!\t)\p{Cc}/u);
        }
      }),
    );
  });

  it('comes back whole when its long lines are put together again', () => {
    const eventName = 'Ein sehr langer Name für eine Übung über dem Deck '.repeat(4).trim();
    const text = calendarText(input({ eventName }));
    expect(text.replaceAll('\r\n ', '')).toContain(`\r\nSUMMARY:${eventName}\r\n`);
    expect(convertIcsCalendar(undefined, text).events!.at(-1)!.summary).toBe(eventName);
  });

  it('gives each entry a name of its own, the same each time', () => {
    const uids = (stampMs: number) =>
      convertIcsCalendar(undefined, calendarText(input({ stampMs }))).events!.map(({ uid }) => uid);
    expect(new Set(uids(eveningMs)).size).toBe(3);
    expect(uids(eveningMs)).toEqual(uids(eveningMs + MINUTE_MS));
  });
});
