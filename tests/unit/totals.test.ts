import { describe, expect, it } from 'vitest';
import { closingLine, none, sum, totalsOf } from '../totals.ts';

const report = (counts: Record<string, number>): string => JSON.stringify(counts);

describe('the totals of a test step', () => {
  it('are those of its report', () => {
    const text = report({ numPassedTests: 7, numFailedTests: 2, numPendingTests: 1, numTodoTests: 1 });
    expect(totalsOf(text, 1)).toEqual({ passed: 7, failed: 2, skipped: 2 });
  });

  it.each([
    ['a file that does not load', report({ numPassedTests: 7, numFailedTests: 0 }), 1, 7],
    ['no report at all', null, 1, 0],
    ['a report cut off half-way', '{"numPassedTests": 7', 1, 0],
    ['a step that ran out of time', null, null, 0],
  ])('hold one failure for %s', (_, text, code, passed) => {
    expect(totalsOf(text, code)).toEqual({ passed, failed: 1, skipped: 0 });
  });

  it('add up over the steps', () => {
    const first = { passed: 3, failed: 0, skipped: 1 };
    expect(sum(sum(none, first), { passed: 2, failed: 1, skipped: 0 })).toEqual({
      passed: 5,
      failed: 1,
      skipped: 1,
    });
  });

  it('close the run in one plain line', () => {
    expect(closingLine({ passed: 5, failed: 1, skipped: 0 })).toBe('5 passed, 1 failed');
    expect(closingLine({ passed: 5, failed: 0, skipped: 2 })).toBe('5 passed, 0 failed, 2 skipped');
  });
});
