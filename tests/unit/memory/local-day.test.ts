/** Local days against the platform's own calendar (Intl and its time zone data). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DAY_MS,
  endOfLocalDayMs,
  localDayAt,
  localDayKey,
  type OffsetAt,
} from '../../../src/memory/local-day.ts';
import { HOUR_MS, MINUTE_MS, offsetIn } from './examples.ts';

/** Days since 1970 of the date that the platform shows in a zone, some hours earlier on its clock. */
function calendar(timeZone: string) {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    ...{ year: 'numeric', month: 'numeric', day: 'numeric', hour: 'numeric', hourCycle: 'h23' },
  });
  return (ms: number, startHour: number): number => {
    const parts = format.formatToParts(ms);
    const part = (wanted: string) => Number(parts.find(({ type }) => type === wanted)!.value);
    const date = Date.UTC(part('year'), part('month') - 1, part('day')) / DAY_MS;
    return part('hour') < startHour ? date - 1 : date;
  };
}

/** First instants of a new offset between two years, to the second. */
function changes(offsetAt: OffsetAt, fromYear: number, toYear: number): number[] {
  const found: number[] = [];
  for (let ms = Date.UTC(fromYear, 0, 1); ms < Date.UTC(toYear, 0, 1); ms += 5 * DAY_MS) {
    let [low, high] = [ms, ms + 5 * DAY_MS];
    if (offsetAt(low) === offsetAt(high)) continue;
    while (high - low > 1000) {
      const middle = Math.floor((low + high) / 2000) * 1000;
      if (offsetAt(middle) === offsetAt(low)) low = middle;
      else high = middle;
    }
    found.push(high);
  }
  return found;
}

/** Zones and years with changes of every sort; none sets the clock back across its own midnight or 4 o'clock. */
const zones = [
  ['Europe/London', 2020, 2028],
  ['America/New_York', 2020, 2028],
  ['America/Sao_Paulo', 2010, 2020],
  ['Australia/Lord_Howe', 2020, 2028],
  ['Asia/Kathmandu', 1984, 1988],
  ['Africa/Cairo', 2008, 2027],
  ['Pacific/Apia', 2009, 2013],
] as const;

describe.each(zones)('in %s', (zone, fromYear, toYear) => {
  const offsetAt = offsetIn(zone);
  const shown = calendar(zone);
  const instants = changes(offsetAt, fromYear, toYear).flatMap((changeMs) =>
    [-30, -25, -24, -23, -5, -4, -2, -1, -0.5, 0, 0.5, 1, 2, 3, 4, 5, 23, 24, 25, 30].flatMap((hours) => [
      changeMs + hours * HOUR_MS - 1,
      changeMs + hours * HOUR_MS,
    ]),
  );

  it('has had its changes of offset', () => {
    expect(instants.length).toBeGreaterThan(0);
  });

  it.each([0, 4])('days that start at %i are those of the calendar, around every change', (startHour) => {
    for (const ms of instants)
      expect(localDayKey(ms, offsetAt, startHour), new Date(ms).toISOString()).toBe(shown(ms, startHour));
  });

  it('days that start at 4 are those of the calendar, at any instant', () => {
    const anyInstant = fc.integer({ min: Date.UTC(fromYear, 0, 1), max: Date.UTC(toYear, 0, 1) });
    fc.assert(
      fc.property(anyInstant, (ms) => localDayKey(ms, offsetAt) === shown(ms, 4)),
      { numRuns: 200 },
    );
  });
});

/** A made-up place: an offset until an instant, another one from then on. */
const changing = (beforeMinutes: number, changeMs: number, afterMinutes: number): OffsetAt => {
  return (ms) => (ms < changeMs ? beforeMinutes : afterMinutes);
};

describe('days', () => {
  const anyOffset = fc.integer({ min: -12 * 60, max: 14 * 60 });
  const anyPlace = fc
    .tuple(anyOffset, fc.integer({ min: -3 * DAY_MS, max: 3 * DAY_MS }), anyOffset)
    .map(([before, changeMs, after]) => changing(before, changeMs, after));
  const anyHour = fc.integer({ min: 0, max: 12 });

  it('cover every instant once, in order, whatever the offset changes to', () => {
    const anyInstant = fc.integer({ min: -5 * DAY_MS, max: 5 * DAY_MS });
    fc.assert(
      fc.property(anyPlace, anyInstant, anyHour, (offsetAt, ms, startHour) => {
        const day = localDayAt(ms, offsetAt, startHour);
        expect(day.startMs).toBeLessThanOrEqual(ms);
        expect(day.endMs).toBeGreaterThan(ms);
        expect(localDayAt(day.startMs, offsetAt, startHour)).toEqual(day);
        expect(localDayAt(day.endMs - 1, offsetAt, startHour)).toEqual(day);
        const next = localDayAt(day.endMs, offsetAt, startHour);
        expect(next.startMs).toBe(day.endMs);
        expect(next.key).toBeGreaterThan(day.key);
      }),
      { numRuns: 2000 },
    );
  });

  it('never go back to a date that is over', () => {
    fc.assert(
      fc.property(anyPlace, anyHour, (offsetAt, startHour) => {
        let last = -Infinity;
        for (let ms = -4 * DAY_MS; ms < 4 * DAY_MS; ms += 47 * MINUTE_MS) {
          const key = localDayKey(ms, offsetAt, startHour);
          expect(key).toBeGreaterThanOrEqual(last);
          last = key;
        }
      }),
      { numRuns: 200 },
    );
  });

  it('start anew once when the clock is set back across their start', () => {
    // St John's, 7 November 2010: at 00:01 the clocks went back to 23:01 of the day before.
    const offsetAt = offsetIn('America/St_Johns');
    const midnight = Date.UTC(2010, 10, 7, 2, 30);
    const changeMs = midnight + MINUTE_MS;
    expect(offsetAt(changeMs - 1) - offsetAt(changeMs)).toBe(60);
    const day = localDayAt(midnight, offsetAt, 0);
    expect(day.startMs).toBe(midnight);
    expect(localDayAt(changeMs + 30 * MINUTE_MS, offsetAt, 0)).toEqual(day);
    expect(day.endMs - day.startMs).toBe(25 * HOUR_MS);
  });

  it('start late when their start is skipped', () => {
    // São Paulo, 4 November 2018: 00:00 was 01:00.
    const offsetAt = offsetIn('America/Sao_Paulo');
    const day = localDayAt(Date.UTC(2018, 10, 4, 12), offsetAt, 0);
    expect(day.startMs).toBe(Date.UTC(2018, 10, 4, 3));
    expect(day.endMs - day.startMs).toBe(23 * HOUR_MS);
  });

  it('leave out a date that a place leaves out', () => {
    // Samoa had no 30 December 2011.
    const offsetAt = offsetIn('Pacific/Apia');
    const last = localDayAt(Date.UTC(2011, 11, 30, 9, 59), offsetAt, 0);
    const next = localDayAt(Date.UTC(2011, 11, 30, 10), offsetAt, 0);
    expect(next.key - last.key).toBe(2);
    expect(next.startMs).toBe(last.endMs);
  });

  it('have 23 and 25 hours when summer time comes and goes', () => {
    const offsetAt = offsetIn('Europe/London');
    const hours = (ms: number) => {
      const { startMs, endMs } = localDayAt(ms, offsetAt);
      return (endMs - startMs) / HOUR_MS;
    };
    expect(hours(Date.UTC(2026, 2, 28, 23))).toBe(23);
    expect(hours(Date.UTC(2026, 9, 24, 23))).toBe(25);
    expect(hours(Date.UTC(2026, 5, 1, 23))).toBe(24);
  });

  it('end at four in the morning, so that an evening past midnight is one evening', () => {
    const atTen = Date.UTC(2026, 8, 1, 22);
    const atHalfPastOne = atTen + 3.5 * HOUR_MS;
    expect(localDayKey(atHalfPastOne, () => 0)).toBe(localDayKey(atTen, () => 0));
    expect(endOfLocalDayMs(atTen, () => 0)).toBe(Date.UTC(2026, 8, 2, 4));
    expect(endOfLocalDayMs(atTen, () => 120)).toBe(Date.UTC(2026, 8, 2, 2));
  });
});
