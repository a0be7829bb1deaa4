/**
 * What the last calls of one value have in common, in words: which way they are off, and where they
 * are heading.
 */
import { sayError, sayValue } from '../deck/say.ts';
import type { Quantity } from '../deck/types.ts';

/** Fewer calls say nothing. */
export const fewestCalls = 3;
/** Older calls are of a time that has passed. */
export const callsLookedAt = 5;

export interface Bias {
  /** "steady", "creeping high", "coming back to target", "mostly 20 ft low", "scattered by 30 ft". */
  readonly words: string;
  /** Of the calls looked at, in the quantity's unit. */
  readonly meanError: number;
  /** Sample standard deviation of the same, in the quantity's unit. */
  readonly spread: number;
}

/**
 * Judged by the last five calls (signed errors in the quantity's unit, oldest first), the first of these that holds:
 *
 * 1. heading: Kendall's S of the errors in time reaches 6 for four calls or 8 for five, which chance
 *    gives once in 24 each way (exact null distribution, Kendall 1938; three calls can't reach it), and the
 *    last error differs from the first by a step or more. Away from the target it is "creeping", and towards it
 *    "coming back to target".
 * 2. "mostly": their median is a step or more off.
 * 3. "scattered": their standard deviation is two steps or more.
 * 4. "steady".
 *
 * `null` for fewer than three calls. Errors that are no finite number are left out.
 */
export function biasOf(signedErrors: readonly number[], quantity: Quantity): Bias | null {
  const errors = signedErrors.filter(Number.isFinite).slice(-callsLookedAt);
  if (errors.length < fewestCalls) return null;
  const meanError = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  const squares = errors.reduce((sum, error) => sum + (error - meanError) ** 2, 0);
  const spread = Math.sqrt(squares / (errors.length - 1));
  const words =
    heading(errors, quantity) ?? mostly(errors, quantity) ?? scattered(spread, quantity) ?? 'steady';
  return { words, meanError, spread };
}

/** By number of calls: all six pairs of four, nine of the ten of five. */
const surelyHeading: Readonly<Record<number, number>> = { 4: 6, 5: 8 };

function heading(errors: readonly number[], quantity: Quantity): string | null {
  const needed = surelyHeading[errors.length] ?? Infinity;
  const first = errors[0]!;
  const last = errors[errors.length - 1]!;
  const moved = last - first;
  if (Math.abs(kendallS(errors)) < needed || !reaches(moved, quantity.step)) return null;
  const crossed = first * last < 0 && reaches(last, quantity.step);
  if (Math.abs(last) < Math.abs(first) && !crossed) return 'coming back to target';
  return `creeping ${moved > 0 ? (quantity.above ?? 'over') : (quantity.below ?? 'under')}`;
}

/** Pairs in rising order less pairs in falling order. */
function kendallS(values: readonly number[]): number {
  let s = 0;
  values.forEach((later, at) => {
    for (const earlier of values.slice(0, at)) s += Math.sign(later - earlier);
  });
  return s;
}

function mostly(errors: readonly number[], quantity: Quantity): string | null {
  const middle = medianOf(errors);
  return reaches(middle, quantity.step) ? `mostly ${sayError(toStep(middle, quantity), quantity)}` : null;
}

function scattered(spread: number, quantity: Quantity): string | null {
  return reaches(spread, 2 * quantity.step)
    ? `scattered by ${sayValue(toStep(spread, quantity), quantity)}`
    : null;
}

/** With room for sums of decimals that fall short by a hair. */
const reaches = (amount: number, least: number) => Math.abs(amount) >= least * (1 - 1e-9);

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

function toStep(amount: number, { step }: Quantity): number {
  return Number((Math.round(amount / step) * step).toFixed(6));
}
