/** Multiples of a quantity's step: the values a pilot calls and a question shows. */
import { decimalsOf } from '../deck/say.ts';
import { holds } from './intervals.ts';
import type { Interval } from './types.ts';

/** The most decimals a step is taken to have; `decimalsOf` looks no further. */
const mostDecimals = 6;

/**
 * The `count`th multiple of a step, as the double nearest to the decimal number: 3 steps of 0.1 are 0.3,
 * not 0.30000000000000004, so that it equals the same number written in a deck.
 */
export function multipleOf(step: number, count: number): number {
  const decimals = decimalsOf(step);
  if (decimals === mostDecimals) return Number((step * count).toFixed(mostDecimals)) + 0;
  // A quotient of two exact whole numbers is rounded once, as a literal is.
  const scale = 10 ** decimals;
  return (Math.round(step * scale) * count) / scale + 0;
}

/** How many multiples of the step lie in an interval, and the count of the first of them. */
export function multiplesIn(
  piece: Interval,
  step: number,
): { readonly first: number; readonly count: number } {
  let first = Math.floor(piece.lo / step) - 1;
  let last = Math.ceil(piece.hi / step) + 1;
  // The quotients may be off by a rounding: membership decides, at most three tries from each end.
  while (first <= last && !holds(piece, multipleOf(step, first)) && multipleOf(step, first) <= piece.lo)
    first++;
  while (last >= first && !holds(piece, multipleOf(step, last)) && multipleOf(step, last) >= piece.hi) last--;
  return { first, count: Math.max(0, last - first + 1) };
}

/** The multiple of the step nearest to a value; of two equally near the upper one. */
export const nearestMultiple = (value: number, step: number): number =>
  multipleOf(step, Math.floor(value / step + 0.5));
