import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Rating } from '../../../src/grading/types.ts';
import { dueFromMs, isDue, nextDueMs } from '../../../src/memory/due.ts';
import { DAY_MS, localDayAt, type LocalDay, type OffsetAt } from '../../../src/memory/local-day.ts';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import { seeded } from '../../../src/rules/random.ts';
import {
  anyMemory,
  dayInGreenwich,
  eveningMs,
  HOUR_MS,
  MINUTE_MS,
  offsetIn,
  remembered,
} from './examples.ts';

const scheduler = createScheduler();
const daysIn =
  (offsetAt: OffsetAt) =>
  (ms: number): LocalDay =>
    localDayAt(ms, offsetAt);

/** Places with and without summer time, whose clocks change within the time tested. */
const places = [
  'Europe/London',
  'America/New_York',
  'Australia/Lord_Howe',
  'Africa/Cairo',
  'Asia/Kathmandu',
].map(offsetIn);
const anyPlace = fc.constantFrom(...places);
const anyInstant = fc.integer({ min: eveningMs - 400 * DAY_MS, max: eveningMs + 800 * DAY_MS });

describe('a card', () => {
  const known = remembered({ lastMs: eveningMs, dueMs: eveningMs + 3 * DAY_MS });

  it('is due from the morning of the day that its due instant falls in', () => {
    const fourInTheMorning = Date.UTC(2026, 8, 4, 4);
    expect(dueFromMs(known, dayInGreenwich)).toBe(fourInTheMorning);
    expect(isDue(known, dayInGreenwich(fourInTheMorning - 1))).toBe(false);
    expect(isDue(known, dayInGreenwich(fourInTheMorning))).toBe(true);
  });

  it('stays due until it is answered', () => {
    for (const days of [3, 4, 40, 4000])
      expect(isDue(known, dayInGreenwich(eveningMs + days * DAY_MS))).toBe(true);
  });

  it('known today is not due today, though the day has 25 hours', () => {
    const dayAt = daysIn(offsetIn('Europe/London'));
    const today = dayAt(Date.UTC(2026, 9, 24, 12));
    const lastMs = today.startMs + 10 * MINUTE_MS;
    const memory = remembered({ lastMs, dueMs: lastMs + DAY_MS });
    expect(memory.dueMs).toBeLessThan(today.endMs);
    expect(isDue(memory, today)).toBe(false);
    expect(isDue(memory, dayAt(today.endMs))).toBe(true);
    expect(dueFromMs(memory, dayAt)).toBe(today.endMs);
  });

  it('not known is due at once', () => {
    const memory = scheduler.next(remembered(), 1, eveningMs + DAY_MS, false);
    expect(isDue(memory, dayInGreenwich(eveningMs + DAY_MS + MINUTE_MS))).toBe(true);
  });

  it('answered by a clock a year ahead is due now, not in a year', () => {
    const ahead = remembered({ lastMs: eveningMs + 365 * DAY_MS });
    expect(isDue(ahead, dayInGreenwich(eveningMs))).toBe(true);
    const putRight = scheduler.next(ahead, 3, eveningMs, false);
    expect(isDue(putRight, dayInGreenwich(eveningMs))).toBe(false);
    expect(putRight.dueMs).toBeGreaterThan(eveningMs);
  });

  it('answered before the clock was set back by hours is not due again', () => {
    expect(isDue(known, dayInGreenwich(eveningMs - 5 * HOUR_MS))).toBe(false);
    expect(isDue(known, dayInGreenwich(eveningMs - DAY_MS))).toBe(false);
  });
});

describe('what is due', () => {
  it('is due from one instant on, in every place', () => {
    fc.assert(
      fc.property(anyMemory, anyPlace, anyInstant, (memory, offsetAt, nowMs) => {
        const dayAt = daysIn(offsetAt);
        const today = dayAt(nowMs);
        fc.pre(memory.lastMs < today.endMs + DAY_MS);
        expect(isDue(memory, today)).toBe(nowMs >= dueFromMs(memory, dayAt));
      }),
      { numRuns: 500 },
    );
  });

  it('is due an hour after its due instant at the latest, wherever the pilot has gone', () => {
    fc.assert(
      fc.property(anyMemory, anyPlace, (memory, offsetAt) => {
        expect(isDue(memory, daysIn(offsetAt)(memory.dueMs + HOUR_MS))).toBe(true);
      }),
    );
  });

  it('waits no longer than its interval and three days, whatever the clock says now', () => {
    fc.assert(
      fc.property(anyMemory, anyPlace, anyInstant, (memory, offsetAt, nowMs) => {
        const dayAt = daysIn(offsetAt);
        if (isDue(memory, dayAt(nowMs))) return;
        expect(dueFromMs(memory, dayAt) - nowMs).toBeLessThan(memory.dueMs - memory.lastMs + 3 * DAY_MS);
      }),
      { numRuns: 500 },
    );
  });

  it('is asked once a day and never forgotten, over a year of clocks set back and forth and flights round the world', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const random = seeded(seed);
        let memory = scheduler.next(null, 3, eveningMs, false);
        let clockMs = eveningMs;
        let offsetAt = places[0]!;
        const daysAnswered: number[] = [];
        for (let visit = 0; visit < 200; visit++) {
          clockMs += random() * 3 * DAY_MS;
          if (random() < 0.1) clockMs -= random() * DAY_MS;
          if (random() < 0.1) offsetAt = places[Math.floor(random() * places.length)]!;
          const today = daysIn(offsetAt)(clockMs);
          const late = clockMs > memory.dueMs + HOUR_MS;
          if (late) expect(isDue(memory, today)).toBe(true);
          if (!isDue(memory, today)) continue;
          // Not since the day began, by the clock as it is now.
          expect(memory.lastMs).toBeLessThan(today.startMs);
          daysAnswered.push(today.key);
          memory = scheduler.next(memory, (2 + Math.floor(random() * 3)) as Rating, clockMs, false);
          expect(isDue(memory, today)).toBe(false);
        }
        expect(daysAnswered.length).toBeGreaterThan(2);
      }),
      { numRuns: 50 },
    );
  });
});

describe('the next time that something is due', () => {
  const due = { memory: remembered({ lastMs: eveningMs - 9 * DAY_MS }) };
  const inThree = { memory: remembered({ dueMs: eveningMs + 3 * DAY_MS }) };
  const inFive = { memory: remembered() };

  it('is that of the first card that is not due yet, on the morning of its day', () => {
    expect(nextDueMs([inFive, { memory: null }, due, inThree], eveningMs, dayInGreenwich)).toBe(
      Date.UTC(2026, 8, 4, 4),
    );
  });

  it('is never when nothing is learnt, or all of it is due already', () => {
    expect(nextDueMs([{ memory: null }], eveningMs, dayInGreenwich)).toBeNull();
    expect(nextDueMs([due], eveningMs, dayInGreenwich)).toBeNull();
  });
});
