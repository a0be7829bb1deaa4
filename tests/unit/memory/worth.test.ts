import { describe, expect, it } from 'vitest';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import type { Scheduler } from '../../../src/memory/types.ts';
import { expectedShowings, MOST_REPEATS, rehearsalGain, REPEAT_SUCCESS } from '../../../src/memory/worth.ts';
import { eveningMs, MINUTE_MS, remembered } from './examples.ts';

const scheduler = createScheduler();

describe('the expected showings', () => {
  it('are one for what is surely recalled, and one more success needed for what is not', () => {
    expect(expectedShowings(1)).toBe(1);
    expect(expectedShowings(0)).toBe(1 + 1 / REPEAT_SUCCESS);
    expect(expectedShowings(0.9)).toBeCloseTo(1 + 0.1 / REPEAT_SUCCESS, 12);
  });

  it('are never more than a session allows', () => {
    expect(expectedShowings(0)).toBeLessThanOrEqual(1 + MOST_REPEATS);
  });
});

describe('the gain of a rehearsal', () => {
  const gainAfter = (stability: number, days: number): number =>
    rehearsalGain(scheduler, remembered({ stability }), false, eveningMs + days * DAY_MS);

  it.each([2, 5, 20, 100])('grows the longer a card of %i days of stability has waited', (stability) => {
    const gains = [0.5, 1, 2, 5, 20].map((times) => gainAfter(stability, Math.ceil(times * stability)));
    expect(gains).toEqual([...gains].sort((one, other) => one - other));
    expect(gains[0]).toBeGreaterThan(0);
  });

  it('is the mean over being recalled and being relearned, less what would be left without', () => {
    // Here a stability is the chance of recall, now and later: 0.9 once recalled, 0.7 once missed and relearned.
    const scripted: Scheduler = {
      next: (memory, rating) =>
        remembered({ stability: rating === 1 ? 0.1 : memory!.stability === 0.1 ? 0.7 : 0.9 }),
      retrievability: (memory) => memory!.stability,
    };
    expect(rehearsalGain(scripted, remembered({ stability: 0.6 }), false, eveningMs)).toBeCloseTo(
      0.6 * 0.9 + 0.4 * 0.7 - 0.6,
      12,
    );
  });

  it('is next to nothing minutes after an answer', () => {
    expect(Math.abs(rehearsalGain(scheduler, remembered(), false, eveningMs + 5 * MINUTE_MS))).toBeLessThan(
      0.01,
    );
  });
});
