/** How a quantity of the day comes about, in the names of what it is made of. */
import { quantityOf } from '../deck/lookup.ts';
import type { Deck } from '../deck/types.ts';
import { spokenName } from './spoken-name.ts';
import { sayExpression } from './working-of-formula.ts';
import { windLine } from './working-of-wind.ts';

/** "Closure = airspeed − wind over deck", the same on every day; null for what is only set for the day. */
export function sayOrigin(deck: Deck, quantity: string): string | null {
  const formula = deck.computed?.quantities.find((one) => one.quantity === quantity);
  if (!formula) return windLine(deck, quantity, {})?.says ?? null;
  const name = (id: string): string => spokenName(quantityOf(deck, id));
  return `${quantityOf(deck, quantity).label} = ${sayExpression(formula.expression, name, deck)}`;
}
