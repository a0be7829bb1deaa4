import { describe, expect, it } from 'vitest';
import { numberIn, wordsForNumber } from '../../../src/deck/words-for-number.ts';

describe('a number written as a text', () => {
  it.each([
    ['140', 140],
    ['140 ft', 140],
    ['140ft', 140],
    ['60°', 60],
    ['-0.5', -0.5],
    ['−3 kt', -3],
    ['+12', 12],
    ['1,500 ft', 1500],
    ['1_500', 1500],
    ['1,234,567.5 lb', 1234567.5],
    ['9,5', 9.5],
    ['1 500', 1500],
    ['.5', 0.5],
  ])('“%s” is %s', (text, value) => {
    expect(numberIn(text)).toBe(value);
  });

  it.each([
    '',
    'high',
    'ft 140',
    '12:30',
    '100..140',
    '1.2.3',
    '1,5.5,5',
    '1,50,00',
    '12 14',
    '< 140',
    '2026-01-31',
  ])('“%s” is none', (text) => {
    expect(numberIn(text)).toBeNull();
  });

  it('leads to the number to write', () => {
    expect(wordsForNumber('140 ft').message).toBe(
      'A number must stand alone, found “140 ft”; write 140 without the unit.',
    );
    expect(wordsForNumber('140').message).toContain('write 140, without quotes');
  });

  it('is quick to refuse a very long one', () => {
    expect(wordsForNumber('1'.repeat(100_000)).code).toBe('wrong-type');
  });
});
