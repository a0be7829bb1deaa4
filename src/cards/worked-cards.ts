/** The cards of worked values. Apart from how they are asked: the first page counts cards and asks none. */
import { dayOf } from '../day/day-of.ts';
import { sayOrigin } from '../day/say-origin.ts';
import { quantityOf } from '../deck/lookup.ts';
import type { Procedure } from '../rules/types.ts';
import { cardId } from './ids.ts';
import type { Card } from './types.ts';
import { workedMs } from './windows.ts';

/** None of what the day leaves without a value. */
export function workedCards({ deck }: Procedure): Card[] {
  const today = deck.worked ? dayOf(deck) : {};
  return (deck.worked ?? [])
    .filter(({ quantity }) => today[quantity] !== undefined)
    .map(({ id, label, gate, quantity, critical, windowS }) => ({
      id: cardId('worked', id),
      kind: 'worked' as const,
      gate: gate ?? null,
      group: gate === undefined ? 'day' : `gate/${gate}`,
      label,
      critical: critical === true,
      windowMs: windowS === undefined ? workedMs : windowS * 1000,
      // How it is worked out, not what it came to: another day is no edit of the deck.
      expected: sayOrigin(deck, quantity) ?? quantityOf(deck, quantity).label,
    }));
}
