import type { Band, Quantity } from '../deck/types.ts';
import type { BandGrade, Performance } from './types.ts';

/**
 * Grades a value by its band; bounds belong to the band, a floor and a ceiling are still allowed
 * themselves. Past a floor or ceiling the value is outside, whatever the bounds say.
 * @param value in the quantity's unit, as are all of the band's numbers.
 */
export function gradeValue(value: number, band: Band, quantity: Pick<Quantity, 'step'>): BandGrade {
  const signedError = clean(value - band.target);
  const passedLimit = limitPassed(value, band);
  return {
    performance: passedLimit === null ? performanceOf(value, band) : 'outside',
    signedError,
    steps: clean(signedError / quantity.step),
    passedLimit,
  };
}

function limitPassed(value: number, { floor, ceiling }: Band): BandGrade['passedLimit'] {
  if (floor !== undefined && value < floor) return 'floor';
  return ceiling !== undefined && value > ceiling ? 'ceiling' : null;
}

function performanceOf(value: number, { desired, adequate }: Band): Performance {
  const within = ([lo, hi]: readonly [number, number]) => value >= lo && value <= hi;
  if (within(desired)) return 'desired';
  return within(adequate) ? 'adequate' : 'outside';
}

/** 0.3 - 0.1 is 0.2 to a pilot: drops what doubles add behind the ninth decimal. */
const clean = (value: number): number => (Math.abs(value) < 1e9 ? Math.round(value * 1e9) / 1e9 + 0 : value);
