/** A deck whose values move with the day: read as the app reads one. */
import { loadDeck } from '../../src/deck/load.ts';
import type { Deck } from '../../src/deck/types.ts';
import { readFormulas } from '../../src/formulas/read-formulas.ts';
import { edited } from '../unit/deck/edited.ts';
import { formulaDeckText } from '../unit/formulas/formula-deck.ts';

function loaded(text: string): Deck {
  const { deck, findings } = loadDeck(text, readFormulas);
  if (!deck) throw new Error(findings[0]?.message);
  return deck;
}

/** Closure at its far gate is 60 kt in 10 kt of wind, 52 in 18. */
export const formulaDeck = loaded(formulaDeckText);

/** The same, but with little wind its closure has no value. */
export const narrowDeck = loaded(edited('ceiling: 90 }', 'ceiling: 72 }', formulaDeckText));
