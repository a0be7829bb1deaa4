/** Cards, memories and days to test with. */
import fc from 'fast-check';
import type { CardKind } from '../../../src/cards/types.ts';
import { DAY_MS, localDayAt, type LocalDay, type OffsetAt } from '../../../src/memory/local-day.ts';
import type { CardMemory, SessionCard } from '../../../src/memory/types.ts';

export const MINUTE_MS = 60_000;
export const HOUR_MS = 3_600_000;

/** 1 September 2026, 19:00 UTC. */
export const eveningMs = Date.UTC(2026, 8, 1, 19);

/** Last answered on the evening, due five days later, unless told otherwise. */
export function remembered(change: Partial<CardMemory> = {}): CardMemory {
  const lastMs = change.lastMs ?? eveningMs;
  return {
    stability: 5,
    difficulty: 5,
    lastMs,
    dueMs: lastMs + 5 * DAY_MS,
    answers: 1,
    lapses: 0,
    ...change,
  };
}

/** A new card, unless told otherwise. Its id is its place in the procedure. */
export function card(order: number, change: Partial<SessionCard> = {}): SessionCard {
  return {
    id: `card ${order}`,
    kind: 'value',
    group: `gate ${order}`,
    order,
    critical: false,
    memory: null,
    ...change,
  };
}

export const dayInGreenwich = (ms: number): LocalDay => localDayAt(ms, () => 0);

/** The offset of a zone as the platform's own time zone data has it, in minutes east of UTC. */
export function offsetIn(timeZone: string): OffsetAt {
  const format = new Intl.DateTimeFormat('en-GB', { timeZone, timeZoneName: 'longOffset' });
  return (ms) => {
    const name = format.formatToParts(ms).find(({ type }) => type === 'timeZoneName')!.value;
    const [, sign, hours, minutes, seconds] = /^GMT(?:([+-])(\d\d):(\d\d)(?::(\d\d))?)?$/.exec(name)!;
    if (sign === undefined) return 0;
    const total = Number(hours) * 60 + Number(minutes) + Number(seconds ?? 0) / 60;
    return sign === '-' ? -total : total;
  };
}

export const kinds: readonly CardKind[] = [
  'value',
  'limit',
  'order',
  'checklist',
  'response',
  'complete-by',
  'rule',
  'spot',
  'note',
  'worked',
];

/** Anything from learnt years ago to answered by a clock that was a month ahead. */
export const anyMemory: fc.Arbitrary<CardMemory> = fc
  .record({
    stability: fc.double({ min: 0.01, max: 2000, noNaN: true }),
    difficulty: fc.double({ min: 1, max: 10, noNaN: true }),
    lastMs: fc.integer({ min: eveningMs - 2000 * DAY_MS, max: eveningMs + 30 * DAY_MS }),
    days: fc.integer({ min: 0, max: 2000 }),
    answers: fc.integer({ min: 1, max: 100 }),
    lapses: fc.integer({ min: 0, max: 20 }),
  })
  .map(({ days, ...memory }) => ({
    ...memory,
    dueMs: memory.lastMs + (days === 0 ? MINUTE_MS : days * DAY_MS),
  }));
