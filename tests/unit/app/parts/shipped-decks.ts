/** The decks the app comes with, for pictures that must hold for real ones. Their checks are tested elsewhere. */
import { parse } from 'yaml';
import type { Deck } from '../../../../src/deck/types.ts';

// Not read from the disk: component tests run as in a browser.
const texts = import.meta.glob<string>('../../../../decks/*.deck.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

export const shippedDecks: readonly Deck[] = Object.values(texts).map((text) => parse(text) as Deck);
