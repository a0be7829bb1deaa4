import { describe, expect, it } from 'vitest';
import {
  answerTimes,
  FEEDBACK_SECONDS,
  LATEST_ANSWERS,
  PRIOR_ANSWERS,
  secondsPerKind,
} from '../../../src/memory/seconds.ts';
import { kinds } from './examples.ts';

const values = (...seconds: number[]) =>
  seconds.map((answer) => ({ cardKind: 'value' as const, elapsedMs: answer * 1000 }));
const times = (count: number, seconds: number): number[] => Array.from({ length: count }, () => seconds);

describe('the seconds that a card takes', () => {
  const atFirst = secondsPerKind([]);

  it('have a starting value for every kind, with the time to read what was right', () => {
    for (const kind of kinds) expect(atFirst(kind)).toBeGreaterThan(FEEDBACK_SECONDS);
    expect(atFirst('checklist')).toBeGreaterThan(atFirst('value'));
  });

  it('go from the starting value to the median of the answers, as these become more', () => {
    const start = atFirst('value') - FEEDBACK_SECONDS;
    const after = (count: number) => secondsPerKind(values(...times(count, 10)))('value') - FEEDBACK_SECONDS;
    expect(after(PRIOR_ANSWERS)).toBeCloseTo((start + 10) / 2, 9);
    expect(after(1)).toBeLessThan(after(2));
    expect(after(LATEST_ANSWERS)).toBeGreaterThan(9);
    expect(after(LATEST_ANSWERS)).toBeLessThan(10);
  });

  it('are not moved by an answer left lying', () => {
    const quick = values(...times(9, 2));
    expect(secondsPerKind([...quick, ...values(7200)])('value')).toBeCloseTo(
      secondsPerKind(values(...times(10, 2)))('value'),
      9,
    );
  });

  it('follow the last answers, not those of long ago', () => {
    const slowAtFirst = values(...times(500, 20), ...times(LATEST_ANSWERS, 2));
    expect(secondsPerKind(slowAtFirst)('value')).toBe(
      secondsPerKind(values(...times(LATEST_ANSWERS, 2)))('value'),
    );
  });

  it('take the middle of two middle answers', () => {
    const between = secondsPerKind(values(1, 2, 4, 9))('value');
    expect(between).toBeCloseTo(secondsPerKind(values(...times(4, 3)))('value'), 9);
  });

  it('of one kind say nothing of another', () => {
    const seconds = secondsPerKind(values(...times(20, 60)));
    for (const kind of kinds) if (kind !== 'value') expect(seconds(kind)).toBe(atFirst(kind));
  });

  it('leave out times that are none', () => {
    expect(secondsPerKind(values(-5, Number.NaN))('value')).toBe(atFirst('value'));
  });
});

describe('answer times', () => {
  it('are the median of the last answers of each kind that was answered, and of how many', () => {
    const others = [{ cardKind: 'rule' as const, elapsedMs: 4000 }];
    expect([...answerTimes([...values(9, 2, 3), ...others])]).toEqual([
      ['rule', { answers: 1, medianSeconds: 4 }],
      ['value', { answers: 3, medianSeconds: 3 }],
    ]);
    expect(answerTimes([]).size).toBe(0);
  });

  it('leave out what was long ago', () => {
    const long = values(...times(50, 20), ...times(LATEST_ANSWERS, 2));
    expect(answerTimes(long).get('value')).toEqual({ answers: LATEST_ANSWERS, medianSeconds: 2 });
  });
});
