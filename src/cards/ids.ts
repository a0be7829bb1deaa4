/**
 * Card ids, made and read back. Parts are ids of the deck, which hold no slash, so a card keeps its
 * id however the deck is reordered, relabelled or its numbers changed.
 */
import type { CardId, CardKind } from './types.ts';

export function cardId(kind: CardKind, ...parts: readonly string[]): CardId {
  return [kind, ...parts].join('/');
}

/** The deck ids a card was made from, in the order of the id. */
export function partsOf(id: CardId): readonly [string, string, string] {
  const [, first = '', second = '', third = ''] = id.split('/');
  return [first, second, third];
}
