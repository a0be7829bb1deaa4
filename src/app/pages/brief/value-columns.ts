/** What the value table shows in columns, and what it names one by one. */
import type { Deck, Quantity } from '../../../deck/types.ts';

const mostColumns = 6;

/** The quantities that at least a third of the gates give a value for, in the deck's order. */
export function valueColumns(deck: Deck): readonly Quantity[] {
  const uses = (id: string): number => deck.gates.filter((gate) => gate.values[id]).length;
  return deck.quantities
    .filter((quantity) => uses(quantity.id) * 3 >= deck.gates.length && uses(quantity.id) > 1)
    .sort((one, other) => uses(other.id) - uses(one.id))
    .slice(0, mostColumns)
    .sort((one, other) => deck.quantities.indexOf(one) - deck.quantities.indexOf(other));
}

/**
 * Number of a source in the deck's list, counted from 1, when a value names one that is not the deck's
 * default; null when there is nothing to mark.
 */
export function sourceNumber(deck: Deck, source: string | undefined): number | null {
  if (source === undefined || source === deck.defaultSource) return null;
  const index = deck.sources.findIndex((candidate) => candidate.id === source);
  return index < 0 ? null : index + 1;
}
