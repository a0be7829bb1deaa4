/**
 * The pilot's day, told from instants and the offset of the local time, without a clock.
 *
 * A day starts at four in the morning, so that an evening which runs past midnight stays one evening.
 * It starts at the first instant at which the local time has reached that hour of that date, and lasts
 * until the next one starts. So days cover all instants, each once, in order, whatever the local time
 * does: days of 23 and 25 hours, an hour that is skipped or comes twice across the start of a day, and a
 * date that is left out altogether, which has no length.
 */

/** Minutes by which local time is ahead of UTC at an instant, in epoch milliseconds: 60 for British summer. */
export type OffsetAt = (ms: number) => number;

export interface LocalDay {
  /** Days since 1970-01-01 on the local calendar. */
  readonly key: number;
  /** Epoch milliseconds; the day holds its start, and not its end. */
  readonly startMs: number;
  readonly endMs: number;
}

export const DAY_STARTS_AT_HOUR = 4;

const HOUR_MS = 3_600_000;
/** A day as clocks count it: the one of memory's intervals, and of a calendar without summer time. */
export const DAY_MS = 24 * HOUR_MS;
/** Further from UTC than the time of any place. */
const FURTHEST_OFFSET_MS = 16 * HOUR_MS;

/** The day that an instant falls in. `startHour` is the local hour at which days start, from 0. */
export function localDayAt(ms: number, offsetAt: OffsetAt, startHour = DAY_STARTS_AT_HOUR): LocalDay {
  let key = Math.floor((localMs(ms, offsetAt) - startHour * HOUR_MS) / DAY_MS);
  let startMs = startOfDayMs(key, offsetAt, startHour);
  let endMs = startOfDayMs(key + 1, offsetAt, startHour);
  // Set back across its own start, the local time shows the date before a second time.
  while (endMs <= ms) {
    key += 1;
    startMs = endMs;
    endMs = startOfDayMs(key + 1, offsetAt, startHour);
  }
  return { key, startMs, endMs };
}

/** Days since 1970-01-01 on the local calendar. */
export function localDayKey(ms: number, offsetAt: OffsetAt, startHour = DAY_STARTS_AT_HOUR): number {
  return localDayAt(ms, offsetAt, startHour).key;
}

/** The instant at which the day of an instant is over. */
export function endOfLocalDayMs(ms: number, offsetAt: OffsetAt, startHour = DAY_STARTS_AT_HOUR): number {
  return localDayAt(ms, offsetAt, startHour).endMs;
}

const localMs = (ms: number, offsetAt: OffsetAt): number => ms + offsetAt(ms) * 60_000;

/** The first instant at which local time has reached the start of a date. Takes it that the offset changes at most once within 32 hours. */
function startOfDayMs(key: number, offsetAt: OffsetAt, startHour: number): number {
  const wantedMs = key * DAY_MS + startHour * HOUR_MS;
  const fromMs = wantedMs - FURTHEST_OFFSET_MS;
  const toMs = wantedMs + FURTHEST_OFFSET_MS;
  const before = offsetAt(fromMs);
  const after = offsetAt(toMs);
  const byOldOffsetMs = wantedMs - before * 60_000;
  if (before === after) return byOldOffsetMs;
  const changeMs = changeOfOffsetMs(fromMs, toMs, offsetAt);
  if (byOldOffsetMs < changeMs) return byOldOffsetMs;
  return Math.max(changeMs, wantedMs - after * 60_000);
}

/** The first instant of the new offset, by halving. */
function changeOfOffsetMs(fromMs: number, toMs: number, offsetAt: OffsetAt): number {
  const before = offsetAt(fromMs);
  let oldMs = fromMs;
  let newMs = toMs;
  while (newMs - oldMs > 1) {
    const middleMs = Math.floor((oldMs + newMs) / 2);
    if (offsetAt(middleMs) === before) oldMs = middleMs;
    else newMs = middleMs;
  }
  return newMs;
}
