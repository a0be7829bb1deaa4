/** The line that says how the wind over the reference point comes about. */
import { quantityOf } from '../deck/lookup.ts';
import { sayValue } from '../deck/say.ts';
import type { Deck } from '../deck/types.ts';
import { onStep } from './band-of-day.ts';
import { spokenName } from './spoken-name.ts';
import type { State, WorkingLine } from './types.ts';

/** Null for a quantity that the wind doesn't make. */
export function windLine(deck: Deck, id: string, values: State): WorkingLine | null {
  const { wind } = deck;
  if (!wind || (id !== wind.along && id !== wind.across)) return null;
  const isAlong = id === wind.along;
  const say = (quantity: string): string => {
    const found = quantityOf(deck, quantity);
    return sayValue(onStep(values[quantity] ?? 0, found.step), found);
  };
  const name = (quantity: string): string => spokenName(quantityOf(deck, quantity));
  const ship = isAlong ? wind.ship : undefined;
  const part = isAlong ? 'cos' : 'sin';
  return {
    says: `${quantityOf(deck, id).label} = ${ship === undefined ? '' : `${name(ship)} + `}${name(wind.speed)} × ${part} ${name(wind.angle)}`,
    with: `= ${ship === undefined ? '' : `${say(ship)} + `}${say(wind.speed)} × ${part} ${say(wind.angle)}`,
    gives: `= ${say(id)}`,
  };
}
