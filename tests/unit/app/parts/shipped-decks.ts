/** The decks the app comes with, for pictures that must hold for real ones. Their checks are tested elsewhere. */
import { loadDeck } from '../../../../src/deck/load.ts';
import type { Deck } from '../../../../src/deck/types.ts';
import { readFormulas } from '../../../../src/formulas/read-formulas.ts';

// Not read from the disk: component tests run as in a browser.
const texts = import.meta.glob<string>('../../../../decks/*.deck.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

export const shippedDecks: readonly Deck[] = Object.values(texts).map(
  (text) => loadDeck(text, readFormulas).deck!,
);
