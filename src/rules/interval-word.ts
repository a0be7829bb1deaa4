/** The deck's own words for values: "closing fast". */
import type { Quantity } from '../deck/types.ts';
import { contains, interval } from './intervals.ts';
import type { IntervalSet } from './types.ts';
import { parseUnary } from './unary.ts';

export interface Word {
  /** Within the quantity's range. */
  readonly set: IntervalSet;
  readonly say: string;
}

/** A deck is never changed in place, so a quantity's words need to be read only once. */
const read = new WeakMap<Quantity, readonly Word[]>();

/** All words a deck has for values of the quantity. */
export function wordsOf(quantity: Quantity): readonly Word[] {
  const known = read.get(quantity);
  if (known) return known;
  const range = interval(...quantity.range);
  const words = (quantity.words ?? []).flatMap(({ when, say }) => {
    const parsed = parseUnary(when, range);
    return parsed.ok ? [{ set: parsed.set, say }] : [];
  });
  read.set(quantity, words);
  return words;
}

/** The word a deck has for a value of the quantity, with all the values it stands for; null when it has none. */
export function wordFor(quantity: Quantity, value: number): Word | null {
  return wordsOf(quantity).find(({ set }) => contains(set, value)) ?? null;
}
