import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Quantity } from '../../../src/deck/types.ts';
import { biasOf } from '../../../src/grading/bias.ts';

const altitude: Quantity = {
  id: 'altitude',
  label: 'Altitude',
  unit: 'ft',
  range: [0, 2000],
  step: 10,
  above: 'high',
  below: 'low',
};
const plain: Quantity = { id: 'count', label: 'Count', unit: 'count', range: [-9, 9], step: 0.1 };

describe('what the last calls have in common', () => {
  test.each([
    ['all on target', [0, 0, 0], 'steady'],
    ['small errors either way', [5, -5, 0, 5, -5], 'steady'],
    ['one wild call among good ones', [0, 0, 30, 0, 0], 'steady'],
    ['always low', [-20, -20, -20], 'mostly 20\u00a0ft low'],
    ['mostly high', [30, 0, 20, 30, 20], 'mostly 20\u00a0ft high'],
    ['more off with every call', [0, 5, 10, 20, 30], 'creeping high'],
    ['more off, one step back', [0, 10, 5, 20, 30], 'creeping high'],
    ['lower with every call', [10, 0, -10, -20], 'creeping low'],
    ['less off with every call', [-40, -30, -20, -10, 0], 'coming back to target'],
    ['through the target to the other side', [-40, -20, 0, 10, 30], 'creeping high'],
    ['rising by less than a step', [0, 1, 2, 3, 4], 'steady'],
    ['three rising calls, which chance gives too often', [-10, 0, 10], 'steady'],
    [
      'five rising but for two pairs, which chance gives too often',
      [0, 10, 5, 20, 15],
      'mostly 10\u00a0ft high',
    ],
    ['four rising but for one pair, which chance gives too often', [0, 10, 5, 20], 'steady'],
    ['wide on both sides', [-40, 40, 0, -40, 40], 'scattered by 40\u00a0ft'],
    ['old calls forgotten', [90, 90, 90, 0, 0, 0, 0, 0], 'steady'],
    ['what is no number left out', [NaN, -20, Infinity, -20, -20], 'mostly 20\u00a0ft low'],
  ])('%s', (_name, errors, words) => {
    expect(biasOf(errors, altitude)?.words).toBe(words);
  });

  it('says nothing after two calls', () => {
    expect(biasOf([-20, -20], altitude)).toBeNull();
  });

  it('says over and under where the deck has no words', () => {
    expect(biasOf([0.1, 0.1, 0.1], plain)?.words).toBe('mostly 0.1 over');
    expect(biasOf([-0.3, -0.3, -0.3], plain)?.words).toBe('mostly 0.3 under');
  });

  it('gives mean and standard deviation of the calls looked at', () => {
    // 2, 4, 4, 6: mean 4, squares 4 + 0 + 0 + 4, over 3.
    const bias = biasOf([2, 4, 4, 6], altitude);
    expect(bias?.meanError).toBe(4);
    expect(bias?.spread).toBeCloseTo(Math.sqrt(8 / 3), 12);
  });

  it('turns its words about when every error changes its sign', () => {
    const turned = (words: string) => words.replace(/high|low/, (word) => (word === 'high' ? 'low' : 'high'));
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 3, maxLength: 8 }), (steps) => {
        const errors = steps.map((step) => step * 5);
        const there = biasOf(errors, altitude)!;
        const back = biasOf(
          errors.map((error) => -error),
          altitude,
        )!;
        // Math.round turns halves up, so a median of half a step may be said one step apart.
        const plainWords = (words: string) => words.replace(/\d+/, 'n');
        expect(plainWords(back.words)).toBe(plainWords(turned(there.words)));
      }),
    );
  });
});
