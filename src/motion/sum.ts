/** A constant plus factors of quantities. */
import type { Sum } from '../deck/types.ts';
import type { State } from '../rules/types.ts';

/** Null when a quantity it needs has no value. */
export function valueOfSum({ constant = 0, factors = {} }: Sum, state: State): number | null {
  let value = constant;
  for (const [id, factor] of Object.entries(factors)) {
    const part = state[id];
    if (part === undefined) return null;
    value += factor * part;
  }
  return value;
}
