import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { ratingOf } from '../../../src/grading/rating.ts';
import { timingOf } from '../../../src/grading/timeliness.ts';
import type { Performance } from '../../../src/rules/types.ts';

const performances: readonly Performance[] = ['outside', 'adequate', 'desired'];

describe('the time an answer took', () => {
  test.each([
    [0, 1, 'prompt', true],
    [2000, 1, 'prompt', true],
    [2001, 1, 'prompt', false],
    [6000, 1, 'prompt', false],
    [6001, 1, 'late', false],
    [12000, 1, 'late', false],
    [12001, 1, 'timed-out', false],
    [9000, 1.5, 'prompt', false],
    [9001, 1.5, 'late', false],
    [24001, 2, 'timed-out', false],
    [Infinity, 1, 'timed-out', false],
    [0, Infinity, 'prompt', false],
    [1e12, Infinity, 'prompt', false],
    [Infinity, Infinity, 'prompt', false],
    [-1, 1, 'prompt', false],
    [NaN, 1, 'prompt', false],
    [6001, NaN, 'late', false],
    [6001, 0, 'late', false],
    [6001, -2, 'late', false],
  ])('%d ms of a window of 6 s, scaled by %d, is %s', (elapsedMs, timing, timeliness, quick) => {
    expect(timingOf(elapsedMs, 6000, timing)).toEqual({ timeliness, quick });
  });
});

describe('the rating for the memory model', () => {
  const prompt = { timeliness: 'prompt', quick: false } as const;
  const quick = { timeliness: 'prompt', quick: true } as const;
  const late = { timeliness: 'late', quick: false } as const;
  const timedOut = { timeliness: 'timed-out', quick: false } as const;
  test.each([
    ['outside', quick, 5, 1],
    ['desired', timedOut, 5, 1],
    ['adequate', quick, 5, 2],
    ['adequate', late, 0, 2],
    ['desired', late, 5, 2],
    ['desired', prompt, 5, 3],
    ['desired', quick, 1, 3],
    ['desired', quick, 2, 4],
    ['desired', quick, NaN, 3],
  ] as const)('%s, %o, after %d desired: %d', (performance, timing, desiredInARow, rating) => {
    expect(ratingOf(performance, timing, desiredInARow)).toBe(rating);
  });

  it('never falls with better performance, a quicker answer or a longer row', () => {
    const any = fc.record({
      performance: fc.constantFrom(0, 1, 2),
      elapsedMs: fc.integer({ min: 0, max: 20_000 }),
      row: fc.integer({ min: 0, max: 5 }),
      timing: fc.constantFrom(1, 1.5, 2, Infinity),
    });
    fc.assert(
      fc.property(any, any, (one, other) => {
        fc.pre(one.timing === other.timing);
        fc.pre(
          one.performance <= other.performance && one.elapsedMs >= other.elapsedMs && one.row <= other.row,
        );
        const rate = ({ performance, elapsedMs, row, timing }: typeof one) =>
          ratingOf(performances[performance]!, timingOf(elapsedMs, 6000, timing), row);
        expect(rate(one)).toBeLessThanOrEqual(rate(other));
      }),
    );
  });

  it('gives an untimed answer no more than three', () => {
    expect(ratingOf('desired', timingOf(10, 6000, Infinity), 9)).toBe(3);
  });
});
