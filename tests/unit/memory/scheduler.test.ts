import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Rating } from '../../../src/grading/types.ts';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { EARLIEST_CLOCK_MS } from '../../../src/memory/gap.ts';
import { createScheduler, FAILED_DUE_MS } from '../../../src/memory/scheduler.ts';
import type { CardMemory } from '../../../src/memory/types.ts';
import { eveningMs, HOUR_MS, MINUTE_MS, remembered } from './examples.ts';

const scheduler = createScheduler();
const ratings: readonly Rating[] = [1, 2, 3, 4];
const anyRating = fc.constantFrom(...ratings);
/** From the start of 1970 to the end of 2099, in no order. */
const anyTime = fc.integer({ min: 0, max: Date.UTC(2100, 0, 1) });
const anyAnswers = fc.array(fc.record({ rating: anyRating, atMs: anyTime, critical: fc.boolean() }), {
  minLength: 1,
  maxLength: 40,
});

function afterAll(
  answers: readonly { rating: Rating; atMs: number; critical?: boolean }[],
): CardMemory | null {
  let memory: CardMemory | null = null;
  for (const { rating, atMs, critical } of answers)
    memory = scheduler.next(memory, rating, atMs, critical ?? false);
  return memory;
}

describe('the memory of a card', () => {
  it('stays sane whatever the answers and whatever the clock does', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        let memory: CardMemory | null = null;
        for (const { rating, atMs, critical } of answers) {
          memory = scheduler.next(memory, rating, atMs, critical);
          expect(memory.stability).toBeGreaterThan(0);
          expect(memory.stability).toBeLessThanOrEqual(36_500);
          expect(memory.difficulty).toBeGreaterThanOrEqual(1);
          expect(memory.difficulty).toBeLessThanOrEqual(10);
          expect(memory.dueMs).toBeGreaterThan(atMs);
          expect(Number.isSafeInteger(memory.dueMs)).toBe(true);
        }
        expect(memory!.answers).toBe(answers.length);
      }),
      { numRuns: 500 },
    );
  });

  it('depends on the answers alone: the same ones give the same, at any other date', () => {
    const anyShiftMs = fc.integer({ min: -500 * DAY_MS, max: 5000 * DAY_MS });
    const laterGaps = fc.array(
      fc.record({ rating: anyRating, gapMs: fc.integer({ min: 0, max: 400 * DAY_MS }) }),
      {
        minLength: 1,
        maxLength: 15,
      },
    );
    fc.assert(
      fc.property(laterGaps, anyShiftMs, (steps, shiftMs) => {
        const from = (startMs: number) => {
          let atMs = startMs;
          return afterAll(steps.map(({ rating, gapMs }) => ({ rating, atMs: (atMs += gapMs) })))!;
        };
        const { stability, difficulty } = from(eveningMs + shiftMs);
        expect({ stability, difficulty }).toEqual(
          (({ stability, difficulty }) => ({ stability, difficulty }))(from(eveningMs)),
        );
      }),
    );
  });

  it('counts a gap to the nearest whole day', () => {
    const first = remembered();
    const stabilityAfter = (gapMs: number) => scheduler.next(first, 3, eveningMs + gapMs, false).stability;
    expect(stabilityAfter(11.9 * HOUR_MS)).toBe(stabilityAfter(MINUTE_MS));
    expect(stabilityAfter(20 * HOUR_MS)).toBe(stabilityAfter(DAY_MS));
    expect(stabilityAfter(35 * HOUR_MS)).toBe(stabilityAfter(DAY_MS));
    expect(stabilityAfter(37 * HOUR_MS)).toBe(stabilityAfter(2 * DAY_MS));
    expect(stabilityAfter(DAY_MS)).toBeGreaterThan(stabilityAfter(MINUTE_MS));
  });

  it('takes two answers a minute apart for one day, also across midnight in Greenwich', () => {
    const midnight = Date.UTC(2026, 8, 2);
    const across = afterAll([
      { rating: 3, atMs: midnight - 30_000 },
      { rating: 3, atMs: midnight + 30_000 },
    ])!;
    const before = afterAll([
      { rating: 3, atMs: midnight - 90_000 },
      { rating: 3, atMs: midnight - 30_000 },
    ])!;
    expect(across.stability).toBe(before.stability);
  });

  it('starts at the stability its parameters give, however small', () => {
    const parameters = [
      0.02, 1.2931, 2.3065, 8.2956, 6.4133, 0.8334, 3.0194, 0.001, 1.8722, 0.1666, 0.796, 1.4835, 0.0614,
      0.2629, 1.6483, 0.6014, 1.8729, 0.5425, 0.0912, 0.0658, 0.1542,
    ];
    const fitted = createScheduler({ parameters });
    expect(ratings.map((rating) => fitted.next(null, rating, eveningMs, false).stability)).toEqual(
      parameters.slice(0, 4),
    );
  });

  it('counts a lapse when a card was forgotten over days, not when it is missed again on the same day', () => {
    const lapses = (...gapsMs: number[]) => {
      let atMs = eveningMs;
      return afterAll([
        { rating: 3, atMs },
        ...gapsMs.map((gapMs) => ({ rating: 1 as const, atMs: (atMs += gapMs) })),
      ])!.lapses;
    };
    expect(lapses(3 * DAY_MS)).toBe(1);
    expect(lapses(3 * DAY_MS, MINUTE_MS, MINUTE_MS)).toBe(1);
    expect(lapses(3 * DAY_MS, MINUTE_MS, 2 * DAY_MS)).toBe(2);
    expect(lapses(MINUTE_MS)).toBe(0);
  });
});

describe('the due date', () => {
  it('is when the chance of recall has fallen to what is desired, to the nearest day', () => {
    for (const [critical, desired] of [
      [false, 0.9],
      [true, 0.95],
    ] as const) {
      const memory = { ...remembered({ stability: 400 }), lastMs: eveningMs };
      const next = scheduler.next(memory, 3, eveningMs + 300 * DAY_MS, critical);
      expect(scheduler.retrievability(next, next.dueMs)).toBeCloseTo(desired, 3);
      expect((next.dueMs - next.lastMs) % DAY_MS).toBe(0);
    }
  });

  it('comes sooner for a critical card, whose memory is otherwise the same', () => {
    const first = scheduler.next(null, 4, eveningMs, false);
    const critical = scheduler.next(null, 4, eveningMs, true);
    expect(critical.dueMs).toBeLessThan(first.dueMs);
    expect({ ...critical, dueMs: 0 }).toEqual({ ...first, dueMs: 0 });
  });

  it('comes sooner the more is desired', () => {
    const dueWith = (retention: number) =>
      createScheduler({ retention }).next(null, 4, eveningMs, false).dueMs;
    expect(dueWith(0.97)).toBeLessThan(dueWith(0.9));
    expect(dueWith(0.9)).toBeLessThan(dueWith(0.8));
  });

  it('is a day away at least for what was known, and at once for what was not', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const { lastMs, dueMs } = afterAll(answers)!;
        if (answers.at(-1)!.rating === 1) expect(dueMs).toBe(lastMs + FAILED_DUE_MS);
        else expect(dueMs - lastMs).toBeGreaterThanOrEqual(DAY_MS);
      }),
    );
  });
});

describe('a clock', () => {
  it('that was set back makes no time pass', () => {
    const before = remembered({ stability: 5 });
    const back = scheduler.next(before, 3, eveningMs - 3 * DAY_MS, false);
    const atOnce = scheduler.next(before, 3, eveningMs, false);
    expect(back.stability).toBe(atOnce.stability);
    expect(back.difficulty).toBe(atOnce.difficulty);
    expect(scheduler.retrievability(before, eveningMs - 3 * DAY_MS)).toBe(1);
  });

  it('that was ahead by a year and is put right brings the card back to this year', () => {
    const ahead = remembered({ lastMs: eveningMs + 365 * DAY_MS, stability: 5 });
    const { lastMs, dueMs } = scheduler.next(ahead, 3, eveningMs, false);
    expect(lastMs).toBe(eveningMs);
    expect(dueMs).toBeLessThan(eveningMs + 30 * DAY_MS);
  });

  it('that has lost its battery changes no date and counts as no gap', () => {
    const before = remembered({ stability: 5 });
    const dead = scheduler.next(before, 3, 0, false);
    expect(dead.lastMs).toBe(before.lastMs);
    expect(dead.stability).toBe(scheduler.next(before, 3, eveningMs, false).stability);
    const learntThen = scheduler.next(null, 3, EARLIEST_CLOCK_MS - DAY_MS, false);
    expect(scheduler.next(learntThen, 3, eveningMs, false).stability).toBe(
      scheduler.next(learntThen, 3, learntThen.lastMs, false).stability,
    );
  });
});

describe('the chance of recall', () => {
  it('is none for a card never answered, 1 right after an answer, 90 % after as many days as the stability', () => {
    const memory = remembered({ stability: 12 });
    expect(scheduler.retrievability(null, eveningMs)).toBe(0);
    expect(scheduler.retrievability(memory, memory.lastMs)).toBe(1);
    expect(scheduler.retrievability(memory, memory.lastMs + 12 * DAY_MS)).toBeCloseTo(0.9, 6);
  });

  it('only falls, hour by hour, and stays between 0 and 1', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 36_500, noNaN: true }),
        anyTime,
        anyTime,
        (stability, one, other) => {
          const memory = remembered({ stability, lastMs: EARLIEST_CLOCK_MS });
          const chances = [one, other]
            .sort((a, b) => a - b)
            .map((atMs) => scheduler.retrievability(memory, atMs));
          expect(chances[0]!).toBeGreaterThanOrEqual(chances[1]!);
          expect(chances[1]!).toBeGreaterThanOrEqual(0);
          expect(chances[0]!).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});

describe('a scheduler that makes no sense', () => {
  it.each([
    ['too few parameters', { parameters: [1, 2, 3] }],
    ['a parameter that is no number', { parameters: Array.from({ length: 21 }, () => Number.NaN) }],
    ['a retention of nothing', { retention: 0 }],
    ['a retention over 1', { criticalRetention: 1.01 }],
    ['a retention that is no number', { retention: Number.NaN }],
  ])('is refused: %s', (_what, options) => {
    expect(() => createScheduler(options)).toThrow(RangeError);
  });
});
