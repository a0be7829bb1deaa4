import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../../src/deck/types.ts';
import { interval } from '../../../src/rules/intervals.ts';
import { sayIntervals } from '../../../src/rules/say-intervals.ts';
import { parseUnary } from '../../../src/rules/unary.ts';

const altitude: Quantity = { id: 'altitude', label: 'Altitude', unit: 'ft', range: [0, 2000], step: 5 };
const say = (text: string, within?: ReturnType<typeof interval>) => {
  const parsed = parseUnary(text, within ?? interval(...altitude.range));
  return sayIntervals(parsed.ok ? parsed.set : [], altitude, within).replaceAll('\u00a0', ' ');
};

describe('a set in words', () => {
  it.each([
    ['-', 'any'],
    ['> 340', 'over 340 ft'],
    ['>= 340', '340 ft or more'],
    ['< 340', 'under 340 ft'],
    ['<= 340', '340 ft or less'],
    ['[100..140]', '100 to 140 ft'],
    ['(100..140]', 'over 100 up to 140 ft'],
    ['[100..140)', '100 to under 140 ft'],
    ['(100..140)', 'over 100 and under 140 ft'],
    ['140', '140 ft'],
    ['< 20, > 40', 'under 20 ft or over 40 ft'],
    ['!= 140', 'anything but 140 ft'],
    ['[1000..2000]', '1,000 ft or more'],
    ['> 5000', 'none'],
  ])('%s is %s', (text, words) => {
    expect(say(text)).toBe(words);
  });

  it('does not say an end that is the end of what can occur', () => {
    expect(say('[100..480]', interval(100, 480))).toBe('any');
    expect(say('(340..480]', interval(100, 480))).toBe('over 340 ft');
  });
});
