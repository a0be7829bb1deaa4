import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { elapsedAt, pausedAt, resumedAt, startedAt } from '../../../../src/app/state/stopwatch.ts';

describe('a stopwatch', () => {
  test('counts from its start', () => {
    expect(elapsedAt(startedAt(1000), 3500)).toBe(2500);
  });

  test('leaves a pause out', () => {
    const paused = pausedAt(startedAt(0), 2000);
    expect(elapsedAt(paused, 9000)).toBe(2000);
    expect(elapsedAt(resumedAt(paused, 9000), 9500)).toBe(2500);
  });

  test('is not set back by a clock that runs backwards', () => {
    expect(elapsedAt(startedAt(5000), 4000)).toBe(0);
  });

  test('counts exactly the time in which it ran, however often it is paused', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(10_000), fc.nat(10_000)), { maxLength: 20 }), (spans) => {
        let atMs = 0;
        let ranMs = 0;
        let watch = pausedAt(startedAt(0), 0);
        for (const [run, pause] of spans) {
          watch = resumedAt(watch, atMs);
          atMs += run;
          ranMs += run;
          watch = pausedAt(watch, atMs);
          atMs += pause;
        }
        expect(elapsedAt(watch, atMs)).toBe(ranMs);
      }),
    );
  });
});
