/** The sessions that are left until an event. */
import { localDayAt, type OffsetAt, DAY_STARTS_AT_HOUR } from '../memory/local-day.ts';
import type { PracticeSession, PracticeTime, TrainingEvent } from './types.ts';

const MINUTE_MS = 60_000;
/** 1970-01-01 was a Thursday; weeks here begin on Monday. */
const WEEKDAY_OF_DAY_0 = 3;

/**
 * Sessions with minutes that begin from now on and before the event, in order of time. One that has begun and would
 * still run counts from now, with what is left of its minutes.
 * @param offsetAt of the pilot's local time, for a weekly plan
 */
export function sessionsLeft(
  { atMs: eventMs, time }: Pick<TrainingEvent, 'atMs' | 'time'>,
  nowMs: number,
  offsetAt: OffsetAt,
): PracticeSession[] {
  const all = time.form === 'sessions' ? time.sessions : weeklySessions(time, nowMs, eventMs, offsetAt);
  return all
    .map((session) => remaining(session, nowMs))
    .filter(({ atMs, minutes }) => minutes > 0 && atMs >= nowMs && atMs < eventMs)
    .sort((one, other) => one.atMs - other.atMs);
}

function remaining(session: PracticeSession, nowMs: number): PracticeSession {
  const lateMinutes = (nowMs - session.atMs) / MINUTE_MS;
  if (lateMinutes <= 0 || lateMinutes >= session.minutes) return session;
  return { atMs: nowMs, minutes: session.minutes - lateMinutes };
}

/** One session for each local day that has minutes, from the day of `nowMs` to the event's. */
function weeklySessions(
  { minutes, startMinute }: Extract<PracticeTime, { readonly form: 'weekly' }>,
  nowMs: number,
  eventMs: number,
  offsetAt: OffsetAt,
): PracticeSession[] {
  const found: PracticeSession[] = [];
  let day = localDayAt(nowMs, offsetAt);
  while (day.startMs < eventMs) {
    const weekday = (((day.key + WEEKDAY_OF_DAY_0) % 7) + 7) % 7;
    const today = minutes[weekday] ?? 0;
    const atMs = localTimeMs(day.key, startMinute, day.startMs, offsetAt);
    if (today > 0) found.push({ atMs, minutes: today });
    day = localDayAt(day.endMs, offsetAt);
  }
  return found;
}

/**
 * The instant of a local time in a pilot's day. Times before the hour at which days start belong to the night
 * that follows. A time that summer time skips comes out as much later as is skipped.
 */
function localTimeMs(key: number, minute: number, dayStartMs: number, offsetAt: OffsetAt): number {
  const afterMidnight = minute < DAY_STARTS_AT_HOUR * 60 ? minute + 24 * 60 : minute;
  const wallMs = (key * 24 * 60 + afterMidnight) * MINUTE_MS;
  const guessMs = wallMs - offsetAt(dayStartMs) * MINUTE_MS;
  return wallMs - offsetAt(guessMs) * MINUTE_MS;
}
