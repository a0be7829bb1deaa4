/**
 * The order in which new cards enter: as the procedure is flown. Gate by gate its values, its limits,
 * its notes, the checklists to be complete by it (each list, then its responses, then its gate), then
 * the limits and rules of the phase that starts there.
 *
 * Numbers to be worked out take longer, and follow what has only to be remembered at their gate.
 *
 * The order of the gates comes after the values and limits of the gate in the middle: by then half of the
 * gates have been met, and the order can be told rather than guessed.
 * Plates, and numbers and notes that belong to no gate, come last.
 */
import { checklistOf, gateIndexOf } from '../deck/lookup.ts';
import type { Deck } from '../deck/types.ts';
import { partsOf } from './ids.ts';
import type { Card } from './types.ts';

/** Compared part by part: gate, step within the gate, which of several checklists, part of the checklist. */
type Rank = readonly [gate: number, step: number, among: number, part: number];

export function inProcedureOrder(deck: Deck, cards: readonly Card[]): Card[] {
  const ranked = cards.map((card) => ({ card, rank: rankOf(deck, card) }));
  // The sort is stable: within a rank the author's order holds.
  ranked.sort((one, other) => compare(one.rank, other.rank));
  return ranked.map(({ card }) => card);
}

function rankOf(deck: Deck, card: Card): Rank {
  const gate = card.gate === null ? Infinity : gateIndexOf(deck, card.gate);
  switch (card.kind) {
    case 'value':
      return [gate, 0, 0, 0];
    case 'limit':
      return [gate, card.group.startsWith('phase/') ? 5 : 1, 0, 0];
    case 'order':
      return [Math.ceil(deck.gates.length / 2) - 1, 2, 0, 0];
    case 'worked':
      return [gate, 4, Infinity, 0];
    case 'note':
      return [gate, 3, 0, 0];
    case 'checklist':
      return checklistRank(deck, card, 0);
    case 'response':
      return checklistRank(deck, card, 1);
    case 'complete-by':
      return checklistRank(deck, card, 2);
    case 'rule':
      return [gate, 6, 0, 0];
    case 'spot':
      return [Infinity, 0, 0, 0];
  }
}

function checklistRank(deck: Deck, card: Card, part: number): Rank {
  const list = checklistOf(deck, partsOf(card.id)[0]);
  return [gateIndexOf(deck, list.completeBy), 4, deck.checklists!.indexOf(list), part];
}

function compare(one: Rank, other: Rank): number {
  for (let part = 0; part < one.length; part++)
    if (one[part] !== other[part]) return one[part]! < other[part]! ? -1 : 1;
  return 0;
}
