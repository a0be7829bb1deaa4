/** A value of a quantity that has two sides, said by its side instead of by a sign: "climbing 90 ft/min", "5 kt to the left". */
import { sayNumber, sayValue } from '../deck/say.ts';
import type { Quantity } from '../deck/types.ts';
import { wordFor } from './interval-word.ts';

/**
 * An offset, a quantity whose range is the same on both sides of zero, is said by the words for errors to
 * either side. Of another value below zero the sign is told by the deck's word for it, when that word is for
 * such values only. Without either the sign stays.
 */
export function saySigned(value: number, quantity: Quantity): string {
  const { range, above, below, step } = quantity;
  const [lowest, highest] = range;
  const written = sayValue(value, quantity);
  if (!/[1-9]/.test(sayNumber(value, step))) return written;
  const size = sayValue(Math.abs(value), quantity);
  if (lowest === -highest && above !== undefined && below !== undefined)
    return `${size} ${value > 0 ? above : below}`;
  if (value > 0) return written;
  const word = wordFor(quantity, value);
  const tellsSign = word?.set.every(({ hi, hiOpen }) => hi < 0 || (hi === 0 && hiOpen)) ?? false;
  return word && tellsSign ? `${word.say} ${size}` : written;
}
