/** What an edit of a deck means for what has been learnt: cards are known by their id. */
import type { Card } from './types.ts';

export interface ChangedCard {
  /** As it is in the new deck. */
  readonly card: Card;
  readonly before: string;
  readonly after: string;
}

export interface CardChanges {
  /** Cards whose answer is the same in both. */
  readonly same: number;
  /** Cards of both whose answer differs, in the order of the new deck. */
  readonly changed: readonly ChangedCard[];
  readonly added: number;
  /** Cards that only the old deck has: their answers stay on record, and wait for a deck that has them. */
  readonly gone: number;
}

/** Compares the cards of two versions of one deck. */
export function changesBetween(before: readonly Card[], after: readonly Card[]): CardChanges {
  const old = new Map(before.map((card) => [card.id, card]));
  const kept = after.flatMap((card) => {
    const was = old.get(card.id);
    return was ? [{ card, before: was.expected, after: card.expected }] : [];
  });
  const changed = kept.filter(({ before: was, after: is }) => was !== is);
  return {
    same: kept.length - changed.length,
    changed,
    added: after.length - kept.length,
    gone: before.length - kept.length,
  };
}
