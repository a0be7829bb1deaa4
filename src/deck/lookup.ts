/**
 * Finding things in a checked deck by id. A deck that passed the checks holds every id it names, so a
 * miss here is a bug of the program and throws.
 */
import type {
  Action,
  Checklist,
  Control,
  Deck,
  DecisionTable,
  Gate,
  Phase,
  Quantity,
  Source,
} from './types.ts';

function found<T extends { readonly id: string }>(
  items: readonly T[] | undefined,
  id: string,
  what: string,
): T {
  const item = items?.find((candidate) => candidate.id === id);
  if (!item) throw new Error(`No ${what} “${id}” in the deck.`);
  return item;
}

export const quantityOf = (deck: Deck, id: string): Quantity => found(deck.quantities, id, 'quantity');
export const gateOf = (deck: Deck, id: string): Gate => found(deck.gates, id, 'gate');
export const phaseOf = (deck: Deck, id: string): Phase => found(deck.phases, id, 'phase');
export const controlOf = (deck: Deck, id: string): Control => found(deck.controls, id, 'control');
export const tableOf = (deck: Deck, id: string): DecisionTable => found(deck.tables, id, 'table');
export const checklistOf = (deck: Deck, id: string): Checklist => found(deck.checklists, id, 'checklist');
export const actionOf = (control: Control, id: string): Action => found(control.actions, id, 'action');

/** Position of a gate in the procedure, from 0; -1 when the deck has no such gate. */
export const gateIndexOf = (deck: Deck, id: string): number => deck.gates.findIndex((gate) => gate.id === id);

/** The source a value names, else the deck's default. */
export const sourceOf = (deck: Deck, id?: string): Source =>
  found(deck.sources, id ?? deck.defaultSource, 'source');

/** The action of a control that means "leave it": the one marked neutral, else the first. */
export const neutralOf = (control: Control): Action =>
  control.actions.find((action) => action.neutral) ?? control.actions[0]!;

/** True when one action does the opposite of the other (said on either of the two). */
export function areOpposite(control: Control, one: string, other: string): boolean {
  return control.actions.some(
    (action) =>
      (action.id === one && action.opposes === other) || (action.id === other && action.opposes === one),
  );
}
