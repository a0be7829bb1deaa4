import { describe, expect, it } from 'vitest';
import { gradeValue } from '../../../src/rules/band.ts';

const band = { target: 140, desired: [130, 150], adequate: [115, 170], floor: 110, ceiling: 180 } as const;

describe('a value graded by its band', () => {
  it.each([
    [140, 'desired', 0, null],
    [130, 'desired', -10, null],
    [150, 'desired', 10, null],
    [150.5, 'adequate', 10.5, null],
    [115, 'adequate', -25, null],
    [114, 'outside', -26, null],
    [110, 'outside', -30, null],
    [109, 'outside', -31, 'floor'],
    [180, 'outside', 40, null],
    [181, 'outside', 41, 'ceiling'],
  ] as const)('%d is %s', (value, performance, signedError, passedLimit) => {
    expect(gradeValue(value, band, { step: 5 })).toEqual({
      performance,
      signedError,
      steps: signedError / 5,
      passedLimit,
    });
  });

  it('is outside past a floor, even where the bounds would allow it', () => {
    const loose = { target: 10, desired: [0, 20], adequate: [0, 20], floor: 5 } as const;
    expect(gradeValue(4, loose, { step: 1 })).toMatchObject({ performance: 'outside', passedLimit: 'floor' });
  });

  it('has an error without the noise of doubles', () => {
    const small = { target: 0.1, desired: [0, 0.2], adequate: [0, 0.3] } as const;
    expect(gradeValue(0.3, small, { step: 0.1 })).toMatchObject({ signedError: 0.2, steps: 2 });
  });
});
