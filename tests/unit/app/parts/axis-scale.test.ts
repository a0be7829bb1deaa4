import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisScale } from '../../../../src/app/parts/axis-scale.ts';

const stops = fc.uniqueArray(fc.integer({ min: -20000, max: 20000 }), { minLength: 2, maxLength: 14 });

describe('an axis that shows near and far in one picture', () => {
  it('is to scale at power 1', () => {
    const scale = axisScale([-15200, 0, 90], 1);
    expect(scale(90) - scale(0)).toBe(90);
    expect(scale(0) - scale(-15200)).toBe(15200);
  });

  it('keeps the order of any two values, also beyond the outermost stops', () => {
    fc.assert(
      fc.property(
        stops,
        fc.double({ min: 0.25, max: 1, noNaN: true }),
        fc.integer({ min: -30000, max: 30000 }),
        fc.integer({ min: 1, max: 5000 }),
        (at, power, value, more) => {
          const scale = axisScale(at, power);
          expect(scale(value + more)).toBeGreaterThan(scale(value));
        },
      ),
    );
  });

  it('brings a wingspan and a mile closer together the smaller the power', () => {
    const ratio = (power: number): number => {
      const scale = axisScale([0, 90, 6090], power);
      return (scale(6090) - scale(90)) / (scale(90) - scale(0));
    };
    expect(ratio(1)).toBeCloseTo(6000 / 90);
    expect(ratio(0.5)).toBeLessThan(ratio(0.8));
    expect(ratio(0.28)).toBeLessThan(8);
  });

  it('draws gaps inside the stretched part that many times as long', () => {
    const plain = axisScale([-300, 0, 400, 2000], 0.4);
    const stretched = axisScale([-300, 0, 400, 2000], 0.4, { fromFt: -300, toFt: 400, factor: 3 });
    expect(stretched(400) - stretched(-300)).toBeCloseTo(3 * (plain(400) - plain(-300)));
    expect(stretched(2000) - stretched(400)).toBeCloseTo(plain(2000) - plain(400));
  });
});
