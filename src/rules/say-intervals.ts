/** Interval sets in words for pilots, and as FEEL unary tests for decks. */
import { sayNumber, sayValue } from '../deck/say.ts';
import type { Quantity } from '../deck/types.ts';
import { complement, equals, interval } from './intervals.ts';
import type { Interval, IntervalSet } from './types.ts';

/**
 * A set in words: "over 340 ft", "100 to 140 ft", "under 20 ft or over 40 ft", "any" for all and "none"
 * for nothing.
 * @param within what can occur at all, else the quantity's range: an end that lies there is not said.
 */
export function sayIntervals(
  set: IntervalSet,
  quantity: Quantity,
  within: Interval = interval(...quantity.range),
): string {
  if (set.length === 0) return 'none';
  if (equals(set, [within])) return 'any';
  const left = complement(set, within);
  if (set.length > 1 && left.length === 1 && isPoint(left[0]!))
    return `anything but ${sayValue(left[0]!.lo, quantity)}`;
  return set.map((piece) => sayInterval(piece, quantity, within)).join(' or ');
}

const isPoint = ({ lo, hi }: Interval): boolean => lo === hi;

function sayInterval(piece: Interval, quantity: Quantity, within: Interval): string {
  const { lo, hi, loOpen, hiOpen } = piece;
  const upper = sayValue(hi, quantity);
  if (isPoint(piece)) return upper;
  const unboundedBelow = lo === within.lo && loOpen === within.loOpen;
  const unboundedAbove = hi === within.hi && hiOpen === within.hiOpen;
  if (unboundedBelow && unboundedAbove) return 'any';
  if (unboundedBelow) return hiOpen ? `under ${upper}` : `${upper} or less`;
  if (unboundedAbove) return loOpen ? `over ${sayValue(lo, quantity)}` : `${sayValue(lo, quantity)} or more`;
  const lower = sayNumber(lo, quantity.step);
  if (loOpen) return hiOpen ? `over ${lower} and under ${upper}` : `over ${lower} up to ${upper}`;
  return hiOpen ? `${lower} to under ${upper}` : `${lower} to ${upper}`;
}

/**
 * A set as the FEEL unary test that `parseUnary` reads back to the same set within the same domain; null
 * for the empty set, which no unary test says.
 */
export function toUnary(set: IntervalSet, domain: Interval): string | null {
  if (set.length === 0) return null;
  if (equals(set, [domain])) return '-';
  return set.map((piece) => pieceToUnary(piece, domain)).join(', ');
}

function pieceToUnary(piece: Interval, domain: Interval): string {
  const { lo, hi, loOpen, hiOpen } = piece;
  if (isPoint(piece)) return String(lo);
  if (lo === domain.lo && loOpen === domain.loOpen) return `${hiOpen ? '<' : '<='} ${hi}`;
  if (hi === domain.hi && hiOpen === domain.hiOpen) return `${loOpen ? '>' : '>='} ${lo}`;
  return `${loOpen ? '(' : '['}${lo}..${hi}${hiOpen ? ')' : ']'}`;
}
