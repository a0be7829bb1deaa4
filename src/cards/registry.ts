/** All kinds of card. A new kind is one more entry here, and its `make` one in `cards-of.ts`. */
import { seeded } from '../rules/random.ts';
import type { Procedure } from '../rules/types.ts';
import type { CardKindEntry, Ground } from './card-kind.ts';
import { cardsMade } from './cards-of.ts';
import { checklist } from './checklist.ts';
import { completeBy } from './complete-by.ts';
import { limit } from './limit.ts';
import { note } from './note.ts';
import { order } from './order.ts';
import { response } from './response.ts';
import { rule } from './rule.ts';
import { spot } from './spot.ts';
import type { Card, CardKind, Prompt } from './types.ts';
import { value } from './value.ts';
import { worked } from './worked.ts';
import { workedCards } from './worked-cards.ts';

export const cardKinds: Readonly<Record<CardKind, CardKindEntry>> = {
  value,
  limit,
  order,
  checklist,
  response,
  'complete-by': completeBy,
  rule,
  spot,
  note,
  worked,
};

/** Every card of a deck, in the order in which new ones enter. */
export const cardsOf = (procedure: Procedure): readonly Card[] => cardsMade(procedure, workedCards);

/** One presentation of a card of this procedure. The same seed gives the same prompt, another a fresh one. */
export function promptFor(procedure: Procedure, card: Card, seed: number): Prompt {
  // Two cards asked with one seed must not be drawn alike.
  return cardKinds[card.kind].show(procedure, card, seeded(seed ^ hashOf(card.id)), seed);
}

/** FNV-1a (Fowler, Noll and Vo), 32 bits. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash;
}

/** Why the card's answer is right, and who says so. */
export function groundOf(procedure: Procedure, card: Card): Ground {
  return cardKinds[card.kind].ground(procedure, card);
}
