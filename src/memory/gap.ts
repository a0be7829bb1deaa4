/**
 * The gap from one answer to the next on the same card.
 *
 * It counts in whole days, to the nearest, as FSRS-6 was fitted; one under twelve hours is none. The
 * calendar is left out on purpose: the same record must come to the same memory in any time zone.
 */
import { DAY_MS } from './local-day.ts';

/** 2020: the clock of a device that says less has lost its battery, and no gap can be told from it. */
export const EARLIEST_CLOCK_MS = Date.UTC(2020, 0, 1);

/** Never negative: a clock set back makes no time pass. */
export function elapsedMs(lastMs: number, atMs: number): number {
  return lastMs < EARLIEST_CLOCK_MS ? 0 : Math.max(0, atMs - lastMs);
}

/** Whole days, 0 or more, by which an answer counts as later than the last one. Epoch milliseconds. */
export function gapDaysBetween(lastMs: number, atMs: number): number {
  return Math.round(elapsedMs(lastMs, atMs) / DAY_MS);
}

/**
 * The instant that the next gap counts from; `lastMs` is null for a first answer. The later answer's
 * clock is believed, even if it says less: what a clock that was ahead put into next year comes back.
 * But not a clock that has stopped telling the time.
 */
export function lastMsAfter(lastMs: number | null, atMs: number): number {
  return lastMs !== null && atMs < EARLIEST_CLOCK_MS ? Math.max(lastMs, atMs) : atMs;
}
