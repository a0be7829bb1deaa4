import fc from 'fast-check';
import { version } from 'uuid';
import { describe, expect, it } from 'vitest';
import { eventIds, idTimeMs, packId, unpackId } from '../../../src/record/event-id.ts';
import { eventIdPattern } from '../../../src/record/schema.ts';
import { eveningMs, randomBytes, testIds } from './examples.ts';

describe('ids of events', () => {
  it('are version 7 UUIDs that carry the time', () => {
    const id = testIds().next(eveningMs);
    expect(version(id)).toBe(7);
    expect(id).toMatch(eventIdPattern);
    expect(idTimeMs(id)).toBe(eveningMs);
  });

  it('hold the time where the RFC’s example has it', () => {
    // RFC 9562, appendix A.6: 22 February 2022, 19:22:22 UTC, 0x017F22E279B0.
    expect(idTimeMs('017f22e2-79b0-7cc3-98c4-dc0c0c07398f')).toBe(Date.UTC(2022, 1, 22, 19, 22, 22));
  });

  it('rise whatever the clock does', () => {
    const clock = fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 2, maxLength: 200 });
    fc.assert(
      fc.property(clock, fc.integer(), (times, seed) => {
        const ids = testIds(seed);
        const made = times.map((ms) => ids.next(eveningMs + ms));
        expect([...new Set(made)].sort()).toEqual(made);
      }),
      { numRuns: 50 },
    );
  });

  it('still rise from the highest start of the count', () => {
    const ids = eventIds(() => new Uint8Array(16).fill(0xff));
    const made = Array.from({ length: 5 }, () => ids.next(eveningMs));
    expect([...new Set(made)].sort()).toEqual(made);
    expect(made.every((id) => idTimeMs(id) === eveningMs)).toBe(true);
  });

  it('differ between two devices in one millisecond', () => {
    const one = testIds(1);
    const other = testIds(2);
    const made = Array.from({ length: 500 }, () => [one.next(eveningMs), other.next(eveningMs)]).flat();
    expect(new Set(made).size).toBe(1000);
  });

  it('take a clock before 1970 for 1970, and drop fractions', () => {
    expect(idTimeMs(testIds().next(-5))).toBe(0);
    expect(idTimeMs(testIds().next(eveningMs + 0.7))).toBe(eveningMs);
  });

  it('pack into 22 characters and back', () => {
    fc.assert(
      fc.property(fc.uuid({ version: 7 }), (id) => {
        expect(packId(id)).toHaveLength(22);
        expect(unpackId(packId(id))).toBe(id);
      }),
    );
  });

  it.each(['', 'short', 'ÄÖÜ'.repeat(8), 'A'.repeat(500)])('never unpack “%s” into an id', (text) => {
    expect(unpackId(text)).not.toMatch(eventIdPattern);
  });

  it('need sixteen random bytes, and ask for no more', () => {
    const asked: number[] = [];
    eventIds((count) => (asked.push(count), randomBytes(1)(count))).next(eveningMs);
    expect(asked).toEqual([16]);
  });
});
